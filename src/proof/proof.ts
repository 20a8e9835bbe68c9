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
  return withoutEchoes([...project.findings, ...runChecks({ workspace, project, shapes }, checksOf(rules))]);
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
  return runChecks({ workspace, project, shapes }, measuring);
}

const measuring: readonly Check[] = checksOf(
  Object.fromEntries(
    Object.entries(byId).filter(([, { check, ownEditionOnly }]) => check && !ownEditionOnly),
  ),
);

/** What is found of pieces that go into or round one another, for whoever has only those and what lies on them. */
export function proofLinks(workspace: Commons, project: Project, shapes: Shapes): Iterable<Finding> {
  return runChecks({ workspace, project, shapes: { ...shapes, findings: [] } }, linking);
}

const linking: readonly Check[] = checksOf({
  'does-not-go-in': byId['does-not-go-in'],
  'band-loose': byId['band-loose'],
});

/** What is wrong with the shapes, and what each of the checks finds. */
function* runChecks(context: ProofContext, checks: readonly Check[]): Generator<Finding> {
  yield* context.shapes.findings;
  for (const check of checks) yield* check(context);
}

/** What one rule finds. */
type Check<K extends RuleId = RuleId> = (
  context: ProofContext,
) => readonly (Finding<K> | Finding<'internal'>)[];

/** Those of the rules that check something, each ready to be run time and again. */
function checksOf(rules: Partial<Rules>): readonly Check[] {
  return (Object.keys(rules) as RuleId[]).flatMap((id) => checkOf(id, rules) ?? []);
}

/** What it found before it broke is kept. */
function checkOf<K extends RuleId>(id: K, { [id]: rule }: Partial<Rules>): Check<K> | undefined {
  if (!rule?.check) return undefined;
  return (context) => {
    const found: (Finding<K> | Finding<'internal'>)[] = [];
    try {
      for (const { at, facts } of rule.check?.(context) ?? []) found.push({ rule: id, at, facts });
    } catch (error) {
      found.push(findMistake(`the rule ${id}`, error, startOf(context.project.file)));
    }
    return found;
  };
}
