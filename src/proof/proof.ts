import { type Edition, type Editions, ownEdition } from '../edition/editions.ts';
import { compare } from '../measure/numbers.ts';
import type { Finding as Found, RuleId } from '../project/finding.ts';
import type { Project, Workspace } from '../project/model.ts';
import { isWholeFile, type Place } from '../project/source.ts';
import type { Shapes } from '../shape/shapes.ts';
import type { Finding } from './finding.ts';
import type { AnyRule, Report } from './rule.ts';
import { rules as byId } from './rules/index.ts';

const everyRule: readonly AnyRule[] = Object.values(byId);

/**
 * Runs every rule over one project: its own checks, the faults of its file and the problems of its shapes.
 * Never throws for what a person wrote; a rule that breaks becomes an `internal` error and the others go on.
 * Sorted by file, then by place.
 */
export function proofProject(
  workspace: Workspace,
  project: Project,
  shapes: Shapes,
  rules: readonly AnyRule[] = everyRule,
): Finding[] {
  const findings = [
    ...proofFindings(project.findings),
    ...editionFindings(workspace, { project, shapes }, rules),
  ];
  return inOrder(withoutDoubles(findings));
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
  const measured = (edition: Edition): Finding[] =>
    editionFindings(workspace, edition, rules, ({ ownEditionOnly }) => !ownEditionOnly);
  const key = ({ rule, at }: Finding): string => `${rule} ${at?.start}`;
  const own = new Set(measured(ownEdition(editions)).map(key));
  const [name, converted] =
    editions.own === 'inch' ? (['metric', editions.metric] as const) : (['inch', editions.inch] as const);
  const findings = measured(converted)
    .filter((finding) => !own.has(key(finding)))
    .map((finding) => ({ ...finding, message: `in the ${name} edition ${finding.message}` }));
  return inOrder(withoutDoubles(findings));
}

/** The faults of `site.yaml`, which concern every project. */
export function proofSite({ site }: Workspace): Finding[] {
  return inOrder(withoutDoubles(proofFindings(site.findings)));
}

/** The faults of the settings and the shared files, whether or not a project uses them. */
export function proofSettings(workspace: Workspace): Finding[] {
  return inOrder(withoutDoubles(proofFindings([...workspace.site.findings, ...workspace.findings])));
}

/** Every finding of a workspace; what is wrong in a file that several projects use is said once. */
export function proofWorkspace(
  workspace: Workspace,
  shapesOf: (project: Project) => Shapes,
  rules: readonly AnyRule[] = everyRule,
): Finding[] {
  const ofProjects = workspace.projects.flatMap((project) =>
    proofProject(workspace, project, shapesOf(project), rules),
  );
  return inOrder(withoutDoubles([...proofSettings(workspace), ...ofProjects]));
}

/** The problems of an edition's shapes, and what each of the rules asked finds in it. */
function editionFindings(
  workspace: Workspace,
  { project, shapes }: Edition,
  rules: readonly AnyRule[],
  isAsked: (rule: AnyRule) => boolean = () => true,
): Finding[] {
  const { path } = project.file;
  return [
    ...shapeFindings(shapes, rules, path),
    ...rules
      .filter(isAsked)
      .flatMap((rule) =>
        collect(rule, path, (report) => rule.check?.({ workspace, project, shapes, report })),
      ),
  ];
}

/** What the rules say of what was found by reading, by looking at pictures or by looking up labels. */
export function proofFindings(found: readonly Found[]): Finding[] {
  return found.map((finding) => {
    try {
      return tellFinding(finding);
    } catch (error) {
      return ours(`the rule ${finding.rule} broke: ${reasonOf(error)}`, finding.at.file.path, finding.at);
    }
  });
}

/** A finding in the words of its rule. */
function tellFinding<K extends RuleId>({ rule: id, at, facts }: Found<K>): Finding {
  const words = byId[id].say?.(facts, at);
  if (!words) throw new Error(`${id} has no words`);
  const place = isWholeFile(at) ? {} : { at };
  return { rule: id, severity: byId[id].severity, notes: [], file: at.file.path, ...place, ...words };
}

function shapeFindings(shapes: Shapes, rules: readonly AnyRule[], file: string): Finding[] {
  return shapes.problems.map(({ rule: id, ...problem }) => {
    const rule = rules.find((each) => each.id === id);
    if (!rule) return ours(`no rule is named ${id}: ${problem.message}`, file, problem.at);
    return { rule: id, severity: rule.severity, notes: [], file, ...problem };
  });
}

/** What one rule reports. What it said before it broke is kept. */
function collect(rule: AnyRule, file: string, run: (report: Report) => void): Finding[] {
  const findings: Finding[] = [];
  try {
    run((statement) =>
      findings.push({ rule: rule.id, severity: rule.severity, notes: [], file, ...statement }),
    );
  } catch (error) {
    findings.push(ours(`the rule ${rule.id} broke: ${reasonOf(error)}`, file));
  }
  return findings;
}

function ours(reason: string, file: string, at?: Place): Finding {
  const { severity, say } = byId.internal;
  const whole = { file: { path: file, text: '' }, start: 0, end: 0 };
  const words = say?.({ reason }, at ?? whole) ?? { message: reason };
  return { rule: 'internal', severity, file, notes: [], ...words, ...(at && { at }) };
}

function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** The same rule at the same place with the same words says nothing new. */
export function withoutDoubles(findings: readonly Finding[]): Finding[] {
  const key = (finding: Finding): string =>
    [finding.rule, fileOf(finding), finding.at?.start, finding.at?.end, finding.message].join('\n');
  return [...new Map(findings.map((finding) => [key(finding), finding])).values()];
}

/** By file, then by place. */
export function inOrder(findings: readonly Finding[]): Finding[] {
  return findings.toSorted(
    (a, b) =>
      compare(fileOf(a), fileOf(b)) ||
      (a.at?.start ?? -1) - (b.at?.start ?? -1) ||
      (a.at?.end ?? -1) - (b.at?.end ?? -1) ||
      compare(a.rule, b.rule),
  );
}

function fileOf(finding: Finding): string {
  return finding.at?.file.path ?? finding.file ?? '';
}
