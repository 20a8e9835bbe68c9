import { type Finding, findMistake, type RuleId } from '../project/finding.ts';
import type { Commons, Project } from '../project/model.ts';
import { startOf } from '../project/source.ts';
import type { Shapes } from '../shape/shapes.ts';
import type { ProofContext, Rules } from './rule.ts';
import { rules as byId } from './rules/index.ts';
import { isWithin } from './sentences.ts';

/**
 * What is wrong with one project: with its text, with its shapes, and what each rule finds. Never throws for what a
 * person wrote; a rule that breaks becomes an `internal` finding and the others go on.
 */
export function proofProject(
  workspace: Commons,
  project: Project,
  shapes: Shapes,
  rules: Partial<Rules> = byId,
): Finding[] {
  return withoutEchoes([...project.findings, ...runRules({ workspace, project, shapes }, rules)]);
}

/** Where it is asked whether a comma is a decimal one, what the second number would be wrong with follows from that. */
function withoutEchoes(findings: readonly Finding[]): Finding[] {
  const asked = findings.flatMap(({ rule, at }) => (rule === 'unclear-comma' && at ? [at] : []));
  return findings.filter(
    ({ rule, at }) => !(SECOND.includes(rule) && at && asked.some((place) => isWithin(at, place))),
  );
}

const SECOND: readonly RuleId[] = ['score-order', 'score-doubled', 'score-outside'];

/**
 * What the rules find that look at measurements, in a project or a part of one in either edition: one after the other,
 * for whoever needs to know only whether there is any.
 */
export function proofMeasures(workspace: Commons, project: Project, shapes: Shapes): Iterable<Finding> {
  return runRules({ workspace, project, shapes }, measuring);
}

const measuring: Partial<Rules> = Object.fromEntries(
  Object.entries(byId).filter(([, { check, ownEditionOnly }]) => check && !ownEditionOnly),
);

/** What is found of pieces that go into or round one another, for whoever has only those and what lies on them. */
export function proofLinks(workspace: Commons, project: Project, shapes: Shapes): Iterable<Finding> {
  const asked = { 'does-not-go-in': byId['does-not-go-in'], 'band-loose': byId['band-loose'] };
  return runRules({ workspace, project, shapes: { ...shapes, findings: [] } }, asked);
}

/** What is wrong with the shapes, and what each of the rules finds. */
function* runRules(context: ProofContext, rules: Partial<Rules>): Generator<Finding> {
  yield* context.shapes.findings;
  for (const id of Object.keys(rules) as RuleId[]) {
    if (rules[id]?.check) yield* checkRule(id, rules, context);
  }
}

/** What one rule finds. What it found before it broke is kept. */
function* checkRule<K extends RuleId>(
  id: K,
  rules: Partial<Rules>,
  context: ProofContext,
): Generator<Finding<K> | Finding<'internal'>> {
  try {
    for (const { at, facts } of rules[id]?.check?.(context) ?? []) yield { rule: id, at, facts };
  } catch (error) {
    yield findMistake(`the rule ${id}`, error, startOf(context.project.file));
  }
}
