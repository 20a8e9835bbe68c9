import { type Edition, type Editions, ownEdition } from '../edition/editions.ts';
import { type Finding, findMistake, type RuleFacts, type RuleId } from '../project/finding.ts';
import type { Project, Workspace } from '../project/model.ts';
import { startOf } from '../project/source.ts';
import type { Shapes } from '../shape/shapes.ts';
import type { AnyRule, ProofContext, Rule } from './rule.ts';
import { rules as byId } from './rules/index.ts';

const everyRule: readonly AnyRule[] = Object.values(byId);

/**
 * What is wrong with one project: with its text, with its shapes, and what each rule finds. Never throws for what a
 * person wrote; a rule that breaks becomes an `internal` finding and the others go on.
 */
export function proofProject(
  workspace: Workspace,
  project: Project,
  shapes: Shapes,
  rules: readonly AnyRule[] = everyRule,
): Finding[] {
  return [...project.findings, ...proofEdition(workspace, { project, shapes }, rules)];
}

/**
 * What the converted edition of a project has that the one written has not: a layer that no longer fits once its
 * numbers are rounded, say. Everything that looks at measurements is asked again, and speaks in that edition's unit.
 */
export function proofConverted(
  workspace: Workspace,
  editions: Editions,
  rules: readonly AnyRule[] = everyRule,
): Finding[] {
  const asked = rules.filter(({ ownEditionOnly }) => !ownEditionOnly);
  const key = ({ rule, at }: Finding): string => `${rule} ${at.start}`;
  const own = new Set(proofEdition(workspace, ownEdition(editions), asked).map(key));
  const edition = editions.own === 'inch' ? 'metric' : 'inch';
  return proofEdition(workspace, editions[edition], asked)
    .filter((finding) => !own.has(key(finding)))
    .map((finding) => ({ ...finding, edition }));
}

/** The findings of the settings and the shared files, whether or not a project uses them. */
export function proofSettings({ site, findings }: Workspace): Finding[] {
  return [...site.findings, ...findings];
}

/** Every finding of a workspace. */
export function proofWorkspace(
  workspace: Workspace,
  shapesOf: (project: Project) => Shapes,
  rules: readonly AnyRule[] = everyRule,
): Finding[] {
  const ofProjects = workspace.projects.flatMap((project) =>
    proofProject(workspace, project, shapesOf(project), rules),
  );
  return [...proofSettings(workspace), ...ofProjects];
}

/** What is wrong with an edition's shapes, and what each of the rules asked finds in it. */
function proofEdition(
  workspace: Workspace,
  { project, shapes }: Edition,
  rules: readonly AnyRule[],
): Finding[] {
  const context = { workspace, project, shapes };
  return [...shapes.findings, ...rules.flatMap((rule) => checkRule(rule, context))];
}

/** What one rule finds. What it found before it broke is kept. */
function checkRule<K extends RuleId>(
  { id, check }: Pick<Rule<K, RuleFacts[K]>, 'id' | 'check'>,
  context: ProofContext,
): (Finding<K> | Finding<'internal'>)[] {
  const findings: (Finding<K> | Finding<'internal'>)[] = [];
  try {
    for (const { at, facts } of check?.(context) ?? []) findings.push({ rule: id, at, facts });
  } catch (error) {
    findings.push(findMistake(`the rule ${id}`, error, startOf(context.project.file)));
  }
  return findings;
}
