import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Length } from '../../src/measure/length.ts';
import { parseLength } from '../../src/measure/notation.ts';
import type {
  Ledger,
  PieceChange,
  PublishedFact,
  PublishedValue,
  Revision,
} from '../../src/project/ledger/ledger.ts';
import { ledgerText } from '../../src/project/ledger/ledger-format.ts';
import { readLedger } from '../../src/project/ledger/read-ledger.ts';
import { pointAt } from '../../src/project/source.ts';

const read = (text: string): { ledger: Ledger; at: { line: number; text: string } | undefined } => {
  const lines: { line: number; text: string }[] = [];
  const ledger = readLedger({ path: 'box/revisions.yaml', text }, ({ at: { start, end } }) =>
    lines.push({ line: pointAt(text, start).line, text: text.slice(start, end) }),
  );
  return { ledger, at: lines[0] };
};

const lengths = (unit: 'in' | 'mm', min: number): fc.Arbitrary<Length[]> =>
  fc.array(
    fc
      .tuple(fc.integer({ min, max: 999 }), fc.constantFrom(1, 2, 3, 16, 64, 100))
      .filter(([top, bottom]) => unit === 'mm' || Math.abs(top) < 300 * bottom)
      .map(([top, bottom]) => Length.of(top, bottom, unit)),
    { minLength: 1, maxLength: 4 },
  );
const word = fc.string({ unit: 'grapheme', maxLength: 20 });
const valueFrom = (least: number): fc.Arbitrary<PublishedValue> =>
  fc.record(
    {
      word,
      // To the six decimals that a sheet can give.
      turn: fc.integer({ min: 0, max: 359_999_999 }).map((millionths) => millionths / 1_000_000),
      inch: lengths('in', least),
      metric: lengths('mm', least),
    },
    { requiredKeys: [] },
  );
const named = { piece: word, sheet: word };
const requiredKeys = ['piece', 'what'] as const;
const scores = fc.record(
  { ...named, what: fc.constant('scores'), from: fc.constantFrom('left', 'right', 'top', 'bottom') },
  { requiredKeys: [...requiredKeys, 'from'] },
);
const place = fc.record({ ...named, what: fc.constant('place') }, { requiredKeys: [...requiredKeys] });
const other = fc.record(
  { ...named, what: fc.constantFrom('size', 'cuts', 'corners', 'paper', 'pieces') },
  { requiredKeys: [...requiredKeys] },
);
const pairs = [
  [scores, valueFrom(0)],
  [place, valueFrom(-999)],
  [other, valueFrom(0)],
] as const;
const fact: fc.Arbitrary<PublishedFact> = fc.oneof(
  ...pairs.map(([thing, value]) => fc.tuple(thing, value).map((parts) => Object.assign({}, ...parts))),
);
const change: fc.Arbitrary<PieceChange> = fc.oneof(
  ...pairs.map(([thing, value]) =>
    fc
      .tuple(thing, fc.record({ before: value, after: value }, { requiredKeys: [] }))
      .map((parts) => Object.assign({}, ...parts)),
  ),
);
const steps = fc.constantFrom('new', 'gone', 'reworded', 'renamed', 'reordered');
const revision = fc.record(
  {
    number: fc.integer({ min: 1, max: 99 }),
    date: fc.constant('2026-12-10'),
    own: fc.constantFrom('inch', 'metric'),
    changes: fc.array(fc.oneof(change, word, fc.record({ steps, before: word })), { maxLength: 4 }),
    recut: fc.array(word, { maxLength: 2 }),
  },
  { requiredKeys: ['number', 'date', 'changes'] },
);
const byNumber = (all: Revision[]): Revision[] => all.toSorted((a, b) => a.number - b.number);
const ledgers: fc.Arbitrary<Ledger> = fc.record({
  revisions: fc.uniqueArray(revision, { maxLength: 3, selector: ({ number }) => number }).map(byNumber),
  state: fc.record({
    pieces: fc.array(fact, { maxLength: 4 }),
    steps: fc.array(fc.record({ title: word, words: word }), { maxLength: 2 }),
  }),
});

describe('a ledger', () => {
  it('is read as it was written, whatever stands in it', () => {
    fc.assert(
      fc.property(ledgers, (ledger) => {
        const { ledger: again, at } = read(ledgerText(ledger));
        expect(at).toBeUndefined();
        expect(again).toEqual(ledger);
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  it.each<[Length, 'in' | 'mm', string]>([
    [Length.of(13, 4, 'in'), 'in', '3 1/4 in'],
    [Length.of(1, 8, 'in'), 'in', '1/8 in'],
    [Length.of(-9, 8, 'in'), 'in', '-1 1/8 in'],
    [Length.of(10, 3, 'in'), 'in', '3 1/3 in'],
    [Length.of(4, 1, 'in'), 'in', '4 in'],
    [Length.zero, 'in', '0 in'],
    [Length.of(57, 1, 'mm'), 'mm', '57 mm'],
    [Length.of(5, 2, 'mm'), 'mm', '2 1/2 mm'],
  ])('writes %s in %s as a person would: %s', (length, unit, text) => {
    const pieces: PublishedFact[] = [
      { piece: 'box', what: 'place', [unit === 'in' ? 'inch' : 'metric']: [length] },
    ];
    expect(ledgerText({ revisions: [], state: { pieces, steps: [] } })).toContain(`[ ${text} ]`);
    // Our own notation reads it too.
    const reading = parseLength(text.replace(/^-/u, ''), 'cm');
    expect(reading.ok ? reading.value : Length.zero).toEqual(length.abs());
  });

  const sound = ledgerText({
    revisions: [
      { number: 1, date: '2026-12-01', own: 'inch', changes: [] },
      {
        number: 2,
        date: '2026-12-08',
        own: 'inch',
        changes: [{ piece: 'box', what: 'pieces', before: { word: '2' }, after: { word: '3' } }],
      },
    ],
    state: { pieces: [{ piece: 'box', what: 'size', inch: [Length.of(9, 4, 'in')] }], steps: [] },
  });

  it.each<[string, string, string, string]>([
    ['a number in words', 'number: 2', 'number: two', 'two'],
    ['a day that is none', '2026-12-08', '8 December', '8 December'],
    ['an edition there is not', 'own: inch\n    changes:\n', 'own: yard\n    changes:\n', 'yard'],
    ['a thing nobody knows', 'what: size', 'what: weight', 'weight'],
    ['a length without a unit', '2 1/4 in', '2 1/4', '2 1/4'],
    ['a denominator of zero', '2 1/4 in', '2 1/0 in', '2 1/0 in'],
    ['no steps', 'steps: []', 'stages: []', 'stages'],
    ['a bracket never closed', 'steps: []', 'steps: [', '['],
  ])('is broken at its line by %s', (_, from, to, blamed) => {
    const text = sound.replace(from, to);
    expect(text).not.toBe(sound);
    const { ledger, at } = read(text);
    expect(ledger.revisions).toEqual([]);
    const line = text.split('\n').findLastIndex((each) => each.includes(blamed)) + 1;
    expect(at?.line).toBe(line);
    expect(at?.text).toContain(blamed.split(' ')[0]);
  });
});
