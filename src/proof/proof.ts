import { type Edition, type Editions, ownEdition } from '../edition/editions.ts';
import { compare } from '../measure/numbers.ts';
import type { Fault } from '../project/fault.ts';
import type { Project, Workspace } from '../project/model.ts';
import type { Shapes } from '../shape/shapes.ts';
import type { Finding } from './finding.ts';
import type { Report, Rule } from './rule.ts';
import { rules as everyRule } from './rules/index.ts';

/** The id of a finding that is our own bug: a rule that broke, or a fault or problem no rule speaks for. */
const INTERNAL = 'internal';

/**
 * Runs every rule over one project: its own checks, the faults of its file and the problems of its shapes.
 * Never throws for what a person wrote; a rule that breaks becomes an `internal` error and the others go on.
 * Sorted by file, then by place.
 */
export function proofProject(
  workspace: Workspace,
  project: Project,
  shapes: Shapes,
  rules: readonly Rule[] = everyRule,
): Finding[] {
  const findings = [
    ...wordedFaults(project.faults, rules, project.file.path),
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
  rules: readonly Rule[] = everyRule,
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
export function proofSite({ site, root }: Workspace, rules: readonly Rule[] = everyRule): Finding[] {
  return inOrder(withoutDoubles(wordedFaults(site.faults, rules, root)));
}

/** The faults of the settings and the shared files, whether or not a project uses them. */
export function proofSettings(workspace: Workspace, rules: readonly Rule[] = everyRule): Finding[] {
  const faults = [...workspace.site.faults, ...workspace.faults];
  return inOrder(withoutDoubles(wordedFaults(faults, rules, workspace.root)));
}

/** Every finding of a workspace; what is wrong in a file that several projects use is said once. */
export function proofWorkspace(
  workspace: Workspace,
  shapesOf: (project: Project) => Shapes,
  rules: readonly Rule[] = everyRule,
): Finding[] {
  const ofProjects = workspace.projects.flatMap((project) =>
    proofProject(workspace, project, shapesOf(project), rules),
  );
  return inOrder(withoutDoubles([...proofSettings(workspace, rules), ...ofProjects]));
}

/** The problems of an edition's shapes, and what each of the rules asked finds in it. */
function editionFindings(
  workspace: Workspace,
  { project, shapes }: Edition,
  rules: readonly Rule[],
  isAsked: (rule: Rule) => boolean = () => true,
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

/** What the rules say of faults found after the reading, such as pictures that cannot be shown. */
export function proofFaults(faults: readonly Fault[], rules: readonly Rule[] = everyRule): Finding[] {
  return faults.flatMap((fault) => wordedFaults([fault], rules, fault.at.file.path));
}

function wordedFaults(faults: readonly Fault[], rules: readonly Rule[], file: string): Finding[] {
  return faults.flatMap((fault) => {
    const rule = rules.find((each) => each.fault?.kind === fault.kind);
    if (!rule) return [ours(`no rule speaks for a fault of kind ${fault.kind}`, file, fault.at)];
    return collect(rule, fault.at.file.path, (report) => rule.fault?.report(fault, report));
  });
}

function shapeFindings(shapes: Shapes, rules: readonly Rule[], file: string): Finding[] {
  return shapes.problems.map(({ rule: id, ...problem }) => {
    const rule = rules.find((each) => each.id === id);
    if (!rule) return ours(`no rule is named ${id}: ${problem.message}`, file, problem.at);
    return { rule: id, severity: rule.severity, notes: [], file, ...problem };
  });
}

/** What one rule reports. What it said before it broke is kept. */
function collect(rule: Rule, file: string, run: (report: Report) => void): Finding[] {
  const findings: Finding[] = [];
  try {
    run((statement) =>
      findings.push({ rule: rule.id, severity: rule.severity, notes: [], file, ...statement }),
    );
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    findings.push(ours(`the rule ${rule.id} broke: ${reason}`, file));
  }
  return findings;
}

function ours(message: string, file: string, at?: Finding['at']): Finding {
  return {
    rule: INTERNAL,
    severity: 'error',
    message,
    remedy: 'this is a mistake of Sheetwright, not yours: please report it together with the file',
    file,
    notes: [],
    ...(at && { at }),
  };
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
