import type { Project } from '../project/model.ts';
import { isWholeFile, type Place, pointAt } from '../project/source.ts';
import { frameOf, printable } from './frame.ts';
import type { Severity, Told } from './told.ts';
import { groupThousands, sayCount } from './words.ts';

/** Paints a text, or leaves it as it is. */
type Paint = (ink: 'red' | 'yellow' | 'cyan' | 'gray' | 'bold', text: string) => string;

type PrintOptions = {
  /** How text is colored; without it, not at all. */
  readonly ink?: Paint;
  /** Every project that was looked at, for the summary. */
  readonly projects?: readonly Pick<Project, 'file'>[];
  /** False leaves the summary out. */
  readonly summary?: boolean;
};

const INK = { error: 'red', warning: 'yellow', note: 'cyan' } as const;
const SEVERITIES: readonly Severity[] = ['error', 'warning', 'note'];
const PLAIN: Paint = (_, text) => text;

/**
 * Findings to be read on a terminal: `file:line:column  severity  message  [rule]`, the source line with carets
 * under the very characters, the remedy, further places; a summary last. Ends with a line break.
 */
export function printFindings(findings: readonly Told[], options: PrintOptions = {}): string {
  const ink = options.ink ?? PLAIN;
  const files = new Map<string, Told[]>();
  for (const finding of findings) {
    const { path } = finding.at.file;
    const own = files.get(path) ?? [];
    files.set(path, own);
    own.push(finding);
  }
  const blocks = [...files].flatMap(([path, own]) => printFile(path, own, ink));
  if (options.summary !== false) blocks.push(ink('bold', summarize(findings, options.projects)));
  return blocks.length === 0 ? '' : `${blocks.join('\n\n')}\n`;
}

/** No more than these are told of one file: where there are thousands, a program wrote it, and nobody scrolls through them. */
const MOST_TOLD = 100;

function printFile(path: string, own: readonly Told[], ink: Paint): readonly string[] {
  const told = firstOf(own).map((finding) => printFinding(finding, ink));
  const more = own.length - told.length;
  return more > 0 ? [...told, `and ${groupThousands(more)} more in ${printable(path)}`] : told;
}

/** The first of a file's findings, in their order: warnings and notes only as far as its errors leave room. */
function firstOf(own: readonly Told[]): readonly Told[] {
  if (own.length <= MOST_TOLD) return own;
  const told = new Set(
    SEVERITIES.flatMap((severity) => own.filter((each) => each.severity === severity)).slice(0, MOST_TOLD),
  );
  return own.filter((each) => told.has(each));
}

/** Findings as one JSON array and a line break. */
export function findingsJson(findings: readonly Told[]): string {
  return `${JSON.stringify(findings.map(findingJson), null, 2)}\n`;
}

/** One of them; lines and columns begin at 1, the end is the column after the last. Null is what there isn't. */
export function findingJson(finding: Told): Readonly<Record<string, string | number | null>> {
  const { at, severity, rule, message, remedy = null } = finding;
  const [start, end] = isWholeFile(at)
    ? []
    : [at.start, at.end].map((offset) => pointAt(at.file.text, offset));
  return {
    file: at.file.path,
    line: start?.line ?? null,
    column: start?.column ?? null,
    endLine: end?.line ?? null,
    endColumn: end?.column ?? null,
    severity,
    rule,
    message,
    remedy,
  };
}

function printFinding({ severity, at, message, remedy, rule, notes }: Told, ink: Paint): string {
  const name = ink('bold', nameOf(at));
  const lines = [
    `${name}  ${ink(INK[severity], severity)}  ${printable(message)}  ${ink('gray', `[${rule}]`)}`,
    ...(isWholeFile(at) ? [] : framed(at, INK[severity], ink)),
    ...(remedy === undefined ? [] : [`  remedy: ${printable(remedy)}`]),
    ...notes.flatMap((note) => [
      `  see ${ink('bold', nameOf(note.at))}  ${printable(note.message)}`,
      ...framed(note.at, 'gray', ink),
    ]),
  ];
  return lines.join('\n');
}

function nameOf(at: Place): string {
  const { line, column } = pointAt(at.file.text, at.start);
  return printable(isWholeFile(at) ? at.file.path : `${at.file.path}:${line}:${column}`);
}

function framed(at: Place, color: Parameters<Paint>[0], ink: Paint): string[] {
  const { source, carets } = frameOf(at);
  return [`    ${source}`, `    ${ink(color, carets)}`];
}

/** `2 errors, 1 warning in 1 of 6 projects`. */
function summarize(findings: readonly Told[], projects: PrintOptions['projects']): string {
  const said = SEVERITIES.map((severity) => findings.filter((finding) => finding.severity === severity))
    .flatMap((all) => (all[0] ? [sayCount(all.length, all[0].severity)] : []))
    .join(', ');
  const files = new Set(findings.map(({ at }) => at.file.path));
  if (!projects)
    return findings.length === 0 ? 'nothing found' : `${said} in ${sayCount(files.size, 'file')}`;
  if (findings.length === 0) return `nothing found in ${sayCount(projects.length, 'project')}`;
  const touched = projects.filter(({ file }) => files.has(file.path)).length;
  const others = files.size - touched;
  const elsewhere = others === 0 ? '' : `${sayCount(others, 'other file')}`;
  const inProjects = `${touched} of ${sayCount(projects.length, 'project')}`;
  if (touched === 0) return `${said} in ${elsewhere}`;
  return `${said} in ${inProjects}${elsewhere && ` and ${elsewhere}`}`;
}
