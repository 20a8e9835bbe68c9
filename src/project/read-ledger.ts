import { Document, isNode, isSeq, parseDocument, visit } from 'yaml';
import { z } from 'zod';
import { Length } from '../measure/length.ts';
import type { Finding } from './finding.ts';
import { LEDGER_FILE, type Ledger, NO_REVISIONS, type Revision } from './ledger.ts';
import type { Place, SourceFile } from './source.ts';
import { stateInWords } from './worded-state.ts';
import { yamlProblem } from './yaml-problem.ts';

/** `3 1/4 in`, `-1/8 in`, `57 mm`, `0 mm`. */
const LENGTH = /^(?<minus>-?)(?:(?<whole>\d+) )?(?<top>\d+)(?:\/(?<bottom>[1-9]\d*))? (?<unit>in|mm)$/u;

function lengthOf(text: string): Length {
  const { minus, whole = '0', top = '0', bottom = '1', unit } = LENGTH.exec(text)?.groups ?? {};
  const magnitude = BigInt(whole) * BigInt(bottom) + BigInt(top);
  return Length.of(minus === '-' ? -magnitude : magnitude, BigInt(bottom), unit === 'mm' ? 'mm' : 'in');
}

function lengthText(length: Length, unit: 'in' | 'mm'): string {
  const { numerator, denominator } = length.abs().in(unit);
  const [whole, rest] = [numerator / denominator, numerator % denominator];
  const parts = [
    ...(whole > 0n || rest === 0n ? [whole] : []),
    ...(rest > 0n ? [`${rest}/${denominator}`] : []),
  ];
  return `${length.lessThan(Length.zero) ? '-' : ''}${parts.join(' ')} ${unit}`;
}

function lengthsIn(unit: 'in' | 'mm'): z.ZodOptional<z.ZodArray<z.ZodType<Length, string>>> {
  const isLength = z.custom<Length>((value) => value instanceof Length);
  const text = z.string().regex(LENGTH);
  const length = z.codec(text, isLength, { decode: lengthOf, encode: (each) => lengthText(each, unit) });
  return z.array(length).optional();
}

const value = {
  word: z.string().optional(),
  turn: z.number().optional(),
  inch: lengthsIn('in'),
  metric: lengthsIn('mm'),
};
const thing = {
  piece: z.string(),
  sheet: z.string().optional(),
  what: z.enum(['size', 'scores', 'cuts', 'corners', 'paper', 'pieces', 'place']),
  from: z.enum(['left', 'right', 'top', 'bottom']).optional(),
};
const change = z.union([
  z.string(),
  z.object({ ...thing, before: z.object(value).optional(), after: z.object(value).optional() }),
  z.object({
    steps: z.enum(['new', 'gone', 'reworded', 'renamed', 'reordered']),
    before: z.string().optional(),
    after: z.string().optional(),
  }),
]);
const steps = z.array(z.object({ title: z.string(), words: z.string() }));
const state = z.object({ pieces: z.array(z.object({ ...thing, ...value })), steps });

/** A revision as it stands in a file, and as it is worked with. */
export const revisionCodec: z.ZodType<Revision, unknown> = z.object({
  number: z.number().int().positive(),
  date: z.string().regex(/^\d{4}-\d{2}-\d{2}$/u),
  own: z.enum(['inch', 'metric']).optional(),
  changes: z.array(change),
  recut: z.array(z.string()).optional(),
});
const revisions = z.array(revisionCodec);
const written: z.ZodType<Ledger, unknown> = z.object({ revisions, state: state.optional() });
const inWords = z.object({ measurements: z.record(z.string(), z.string()), steps });
const readable = z.object({ revisions, state: z.union([state, inWords]).optional() });

const EXPECTED =
  'what "sheetwright publish" wrote there: restore it, or delete it to begin again at revision 1';

/**
 * Reads a ledger. One that was broken by hand is reported at the line that is broken: publishing over it would lose
 * what it recorded.
 */
export function readLedger(file: SourceFile | undefined, report: (finding: Finding) => void): Ledger {
  if (!file) return NO_REVISIONS;
  const document = parseDocument(file.text, { logLevel: 'silent' });
  const [error] = document.errors;
  const read = error ? undefined : readable.safeDecode(document.toJS());
  if (read?.success) {
    const { revisions, state: last } = read.data;
    return { revisions, state: last && ('measurements' in last ? stateInWords(last) : last) };
  }
  const start = error ? yamlProblem(error, file.text).start : offsetOf(deepest(read?.error.issues), document);
  const at = lineFrom(file, start);
  const actual = file.text.slice(at.start, at.end);
  report({ rule: 'unexpected-value', at, facts: { key: LEDGER_FILE, expected: EXPECTED, actual } });
  return NO_REVISIONS;
}

/** The path of the value that is wrong: of what may be one of several, that of the one it comes nearest to. */
function deepest(issues: readonly z.core.$ZodIssue[] = []): readonly PropertyKey[] {
  const paths = issues.map((issue) =>
    issue.code === 'invalid_union' ? [...issue.path, ...deepest(issue.errors.flat())] : issue.path,
  );
  return paths.reduce((longest, path) => (path.length > longest.length ? path : longest), []);
}

/** Where the value at a path stands, or the nearest one around it that is there. */
function offsetOf(path: readonly PropertyKey[], document: Document): number {
  for (let depth = path.length; depth > 0; depth -= 1) {
    const node = document.getIn(path.slice(0, depth), true);
    if (isNode(node) && node.range) return node.range[0];
  }
  return 0;
}

function lineFrom(file: SourceFile, start: number): Place {
  const line = /.*/u.exec(file.text.slice(start))?.[0] ?? '';
  return { file, start, end: start + line.trimEnd().length };
}

/** A ledger as it is written. */
export function ledgerText(ledger: Ledger): string {
  const document = new Document(written.encode(ledger));
  document.commentBefore =
    ' The published revisions of this project, written by "sheetwright publish". Do not edit by hand.';
  // A row of lengths stands on one line.
  visit(document, {
    Pair: (_, { key, value: row }) => {
      if (isSeq(row) && ['inch', 'metric'].includes(String(key))) row.flow = true;
    },
  });
  return document.toString({ lineWidth: 110, defaultStringType: 'PLAIN', defaultKeyType: 'PLAIN' });
}
