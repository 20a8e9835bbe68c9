import { Document, isSeq, visit } from 'yaml';
import { z } from 'zod';
import { Length } from '../../measure/length.ts';
import { turnWithin } from '../../measure/round.ts';
import type { Ledger, PublishedState, Revision } from './ledger.ts';
import { stateInWords } from './worded-state.ts';

/**
 * `3 1/4 in`, `-1/8 in`, `57 mm`, `0 mm`. Exact sums of what a sheet gives have long fractions; more digits than these
 * are nobody's, and would only make the arithmetic slow.
 */
const LENGTH =
  /^(?<minus>-?)(?:(?<whole>\d{1,6}) )?(?<top>\d{1,400})(?:\/(?<bottom>[1-9]\d{0,399}))? (?<unit>in|mm)$/u;

/** What is written is a meter at most; the net of a box is a few of them. */
const LONGEST = Length.of(10_000, 1, 'mm');

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

type Lengths = z.ZodOptional<z.ZodArray<z.ZodType<Length, string>>>;

/** At least one length, none below the least. */
function lengthsIn(unit: 'in' | 'mm', least: Length): Lengths {
  const error = `a length, such as ${unit === 'in' ? '3 1/4 in' : '57 mm'}`;
  const isLength = z.custom<Length>(
    (value) => value instanceof Length && !value.lessThan(least) && !value.greaterThan(LONGEST),
    error,
  );
  const text = z.string({ error }).regex(LENGTH, error);
  const length = z.codec(text, isLength, { decode: lengthOf, encode: (each) => lengthText(each, unit) });
  return z.array(length).min(1, `at least ${error}`).optional();
}

function valueFrom(least: Length): Record<'inch' | 'metric', Lengths> & {
  word: z.ZodOptional<z.ZodString>;
  turn: z.ZodOptional<z.ZodNumber>;
  centered: z.ZodOptional<z.ZodEnum<{ both: 'both'; across: 'across'; upright: 'upright' }>>;
  count: z.ZodOptional<z.ZodNumber>;
} {
  const degrees = 'degrees from 0 to less than 360';
  return {
    word: z.string().optional(),
    // Ledgers once had what floating point adds: 7.300000000000011.
    turn: z.number(degrees).min(0, degrees).lt(360, degrees).overwrite(turnWithin).optional(),
    centered: z.enum(['both', 'across', 'upright'], 'both, across or upright').optional(),
    count: z.int('a whole number').min(1, 'a whole number').optional(),
    inch: lengthsIn('in', least),
    metric: lengthsIn('mm', least),
  };
}

const sheet = { piece: z.string(), sheet: z.string().optional(), variant: z.string().optional() };
const edgeless = z.never().optional();
/** Only scores have an edge; only places, of what may hang over or be cut off, are ever negative. */
const things = {
  scores: {
    ...sheet,
    what: z.literal('scores'),
    from: z.enum(['left', 'right', 'top', 'bottom'], 'left, right, top or bottom'),
  },
  place: { ...sheet, what: z.enum(['place', 'edge', 'impressions']), from: edgeless },
  other: {
    ...sheet,
    what: z.enum(['size', 'runs', 'slants', 'cuts', 'openings', 'corners', 'outline', 'paper', 'pieces']),
    from: edgeless,
  },
};
const length = valueFrom(Length.zero);
const offset = valueFrom(Length.zero.minus(LONGEST));
const between = { before: z.strictObject(length).optional(), after: z.strictObject(length).optional() };
const shifted = { before: z.strictObject(offset).optional(), after: z.strictObject(offset).optional() };
const what =
  'size, scores, runs, slants, cuts, openings, corners, outline, paper, pieces, place, edge or impressions';
const stepChange = z.strictObject({
  // Tells it from a change of a piece.
  what: z.undefined().optional(),
  steps: z.enum(
    ['new', 'gone', 'reworded', 'renamed', 'reordered'],
    'new, gone, reworded, renamed or reordered',
  ),
  before: z.string().optional(),
  after: z.string().optional(),
});
const change = z.union([
  z.string(),
  z.discriminatedUnion(
    'what',
    [
      z.strictObject({ ...things.scores, ...between }),
      z.strictObject({ ...things.place, ...shifted }),
      z.strictObject({ ...things.other, ...between }),
      stepChange,
    ],
    what,
  ),
]);
const fact = z.discriminatedUnion(
  'what',
  [
    z.strictObject({ ...things.scores, ...length }),
    z.strictObject({ ...things.place, ...offset }),
    z.strictObject({ ...things.other, ...length }),
  ],
  what,
);
const steps = z.array(z.strictObject({ title: z.string(), words: z.string() }));
const settled = z.strictObject({
  piece: z.string(),
  use: z.string().optional(),
  variant: z.string().optional(),
  kind: z.enum(['part', 'place'], 'part or place'),
  inch: length.inch.unwrap(),
  metric: length.metric.unwrap(),
});
const state: z.ZodType<PublishedState, unknown> = z.strictObject({
  pieces: z.array(fact),
  steps,
  settled: z.array(settled).optional(),
});

/** A revision as it stands in a file, and as it is worked with. */
export const revisionCodec: z.ZodType<Revision, unknown> = z.strictObject({
  number: z.int('a whole number from 1').positive('a whole number from 1'),
  date: z.iso.date('a date, such as 2026-12-10'),
  own: z.enum(['inch', 'metric'], 'inch or metric').optional(),
  changes: z.array(change),
  recut: z.array(z.string()).optional(),
});
const revisions = z.array(revisionCodec);
const written: z.ZodType<Ledger, unknown> = z.strictObject({ revisions, state: state.optional() });

/** Far from where whole numbers end, so that a next one can always be written. */
const LAST_NUMBER = 999_999;
const rising = revisions.superRefine((all, { addIssue }) => {
  for (const [index, { number }] of all.entries()) {
    const last = all[index - 1]?.number ?? 0;
    const path = [index, 'number'];
    if (number <= last) addIssue({ code: 'custom', path, message: `a whole number above ${last}` });
    if (number > LAST_NUMBER)
      addIssue({ code: 'custom', path, message: `a whole number up to ${LAST_NUMBER}` });
  }
});
const inWords = z
  .strictObject({ measurements: z.record(z.string(), z.string()), steps })
  .transform(stateInWords)
  .refine((read) => state.safeEncode(read).success, 'the measurements as they were published');
/** A ledger as it is read, the state of an early one in words. */
export const readable: z.ZodType<Ledger, unknown> = z.strictObject({
  revisions: rising,
  state: z.union([state, inWords]).optional(),
});

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
