import type { Project } from '../project/model.ts';
import { isWholeFile, type Place, pointAt } from '../project/source.ts';
import { frameOf, printable } from './frame.ts';
import { FindingMessage } from './message.ts';
import type { Severity, Told } from './told.ts';
import { sayCount } from './words.ts';

/** Paints a text, or leaves it as it is. */
type Paint = (ink: 'red' | 'yellow' | 'cyan' | 'gray' | 'bold', text: string) => string;

type PrintOptions = {
  /** How text is coloured; without it, not at all. */
  readonly ink?: Paint;
  /** Every project that was looked at, for the summary. */
  readonly projects?: readonly Project[];
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
  const blocks = findings.map((finding) => printFinding(finding, ink));
  if (options.summary !== false) blocks.push(ink('bold', summarise(findings, options.projects)));
  return blocks.length === 0 ? '' : `${blocks.join('\n\n')}\n`;
}

/** Findings as one JSON array and a line break. */
export function findingsJson(findings: readonly Told[]): string {
  return `${JSON.stringify(findings.map(findingJson), null, 2)}\n`;
}

/** One of them; lines and columns begin at 1, the end is the column after the last. Null is what there isn't. */
export function findingJson(finding: Told): Readonly<Record<string, string | number | null>> {
  const { place, file } = new FindingMessage(finding);
  const range = place && 'start' in place ? place : undefined;
  return {
    file: file ?? '',
    line: range?.start.line ?? null,
    column: range?.start.column ?? null,
    endLine: range?.end.line ?? null,
    endColumn: range?.end.column ?? null,
    severity: finding.severity,
    rule: finding.rule,
    message: finding.message,
    remedy: finding.remedy ?? null,
  };
}

function printFinding(finding: Told, ink: Paint): string {
  const { severity, at, remedy, rule, notes } = finding;
  const { name, reason } = new FindingMessage(finding);
  const lines = [
    `${ink('bold', printable(name))}  ${ink(INK[severity], severity)}  ${printable(reason)}  ${ink('gray', `[${rule}]`)}`,
  ];
  if (!isWholeFile(at)) lines.push(...framed(at, INK[severity], ink));
  if (remedy !== undefined) lines.push(`  remedy: ${printable(remedy)}`);
  return [...lines, ...notes.flatMap((note) => printNote(note, ink))].join('\n');
}

function printNote({ message, at }: Told['notes'][number], ink: Paint): string[] {
  const { line, column } = pointAt(at.file.text, at.start);
  const place = `${printable(at.file.path)}:${line}:${column}`;
  return [`  see ${ink('bold', place)}  ${printable(message)}`, ...framed(at, 'gray', ink)];
}

function framed(at: Place, color: Parameters<Paint>[0], ink: Paint): string[] {
  const { source, carets } = frameOf(at);
  return [`    ${source}`, `    ${ink(color, carets)}`];
}

/** `2 errors, 1 warning in 1 of 6 projects`. */
function summarise(findings: readonly Told[], projects: readonly Project[] | undefined): string {
  const counts = SEVERITIES.map((severity) => ({
    severity,
    count: findings.filter((finding) => finding.severity === severity).length,
  })).filter(({ count }) => count > 0);
  const said = counts.map(({ severity, count }) => sayCount(count, severity)).join(', ');
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
