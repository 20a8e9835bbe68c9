import { describe, expect, it } from 'vitest';
import type { RuleId } from '../../src/project/finding.ts';
import type { Ledger } from '../../src/project/ledger/ledger.ts';
import { ledgerText } from '../../src/project/ledger/ledger-format.ts';
import { readLedger } from '../../src/project/ledger/read-ledger.ts';
import { pointAt } from '../../src/project/source.ts';

type Found = {
  readonly rule: RuleId;
  readonly line: number;
  readonly marked: string;
  readonly key?: unknown;
  readonly expected?: unknown;
};

function read(text: string): { ledger: Ledger; found: readonly Found[] } {
  const found: Found[] = [];
  const ledger = readLedger({ path: 'box/revisions.yaml', text }, ({ rule, at: { start, end }, facts }) => {
    found.push({ rule, line: pointAt(text, start).line, marked: text.slice(start, end), ...facts });
  });
  return { ledger, found };
}

const ledgerWith = ({
  number = '2',
  date = '2026-12-08',
  changes = '',
  facts = 'what: size, inch: [ 5 in, 3 in ], metric: [ 127 mm, 76 mm ]',
}: {
  number?: string;
  date?: string;
  changes?: string;
  facts?: string;
}): string => `revisions:
  - number: 1
    date: 2026-12-01
    changes: []
  - number: ${number}
    date: ${date}
    own: inch
    changes: [${changes}]
state:
  pieces:
    - { piece: card, ${facts} }
  steps: []
`;
const [NUMBER, DATE, CHANGES, FACTS] = [5, 6, 8, 11];

const EDGES = ['left', 'right', 'top', 'bottom'];
const EDGELESS = ['size', 'cuts', 'corners', 'paper', 'pieces', 'place'];
const A_DATE = 'a date, such as 2026-12-10';
const A_TURN = 'degrees from 0 to less than 360';
const AN_INCH = 'a length, such as 3 1/4 in';
const AN_EDGE = 'left, right, top or bottom';
const NO_EDGE = 'edge of what has none';
const NO_KEY = 'ledger key';
const NINES = '9'.repeat(5000);

/** What stands where, its line, what of it is marked, its key, and what belongs there. */
type Fault = readonly [Parameters<typeof ledgerWith>[0], number, string, string, string];

/** What stands where, its line, and what of it should not be there and why. */
const misfits: readonly (readonly [Parameters<typeof ledgerWith>[0], number, string, string])[] = [
  ...EDGELESS.flatMap((what) => [
    [{ changes: `{ piece: card, what: ${what}, from: left }` }, CHANGES, 'left', NO_EDGE] as const,
    [{ facts: `what: ${what}, from: top` }, FACTS, 'top', NO_EDGE] as const,
  ]),
  [{ facts: 'what: size, inhc: [ 5 in, 3 in ]' }, FACTS, 'inhc', NO_KEY],
  [{ facts: 'what: size, shete: lid' }, FACTS, 'shete', NO_KEY],
  [{ changes: '{ piece: card, what: size, befor: { word: x } }' }, CHANGES, 'befor', NO_KEY],
  [{ changes: '{ piece: card, what: place, after: { wrod: x } }' }, CHANGES, 'wrod', NO_KEY],
  [{ changes: '{ steps: new, afetr: Cut }' }, CHANGES, 'afetr', NO_KEY],
  [{ date: '2026-12-08\n    onw: inch' }, DATE + 1, 'onw', NO_KEY],
];

const faults: readonly Fault[] = [
  ...['2026-13-01', '2026-12-32', '0000-00-00', '2026-02-30', '2027-02-29', 'soon'].map(
    (date): Fault => [{ date }, DATE, date, 'date', A_DATE],
  ),
  ...['1', '0', '-1', '1.5', '1e99', '.inf', '"2"', '9007199254740991'].map(
    (number): Fault => [
      { number },
      NUMBER,
      number,
      'number',
      number === '1'
        ? 'a whole number above 1'
        : number.startsWith('9')
          ? 'a whole number up to 999999'
          : 'a whole number from 1',
    ],
  ),
  [
    { changes: '{ piece: card, what: scores, after: { word: x } }' },
    CHANGES,
    '{ piece: card, what: scores, after: { word: x } }',
    'from',
    AN_EDGE,
  ],
  [{ changes: '{ piece: card, what: scores, from: up }' }, CHANGES, 'up', 'from', AN_EDGE],
  [
    { facts: 'what: scores, inch: [ 1 in ]' },
    FACTS,
    '{ piece: card, what: scores, inch: [ 1 in ] }',
    'from',
    AN_EDGE,
  ],
  [{ facts: 'what: size, inch: []' }, FACTS, '[]', 'inch', `at least ${AN_INCH}`],
  [{ facts: 'what: size, metric: []' }, FACTS, '[]', 'metric', 'at least a length, such as 57 mm'],
  ...['-5 in', '5', '5 1/0 in', `${NINES} in`, `1/${NINES} in`, '999999 in', 'x', '[]', '{ a: 1 }'].map(
    (length): Fault => [{ facts: `what: size, inch: [ 3 in, ${length} ]` }, FACTS, length, 'inch', AN_INCH],
  ),
  ...['1e308', '360', '-1', '.nan', '.inf', '"45"'].map(
    (turn): Fault => [{ facts: `what: place, turn: ${turn}` }, FACTS, turn, 'turn', A_TURN],
  ),
  [
    { changes: '{ piece: card, what: place, after: { turn: 400 } }' },
    CHANGES,
    '400',
    'turn',
    'degrees from 0 to less than 360',
  ],
  [
    { changes: '{ piece: card, what: smell }' },
    CHANGES,
    'smell',
    'what',
    'size, scores, runs, slants, cuts, openings, corners, outline, paper, pieces, place, edge or impressions',
  ],
  [
    { changes: '{ steps: exploded }' },
    CHANGES,
    'exploded',
    'steps',
    'new, gone, reworded, renamed or reordered',
  ],
];

describe('a ledger that was broken by hand', () => {
  it.each(faults)('is marked at the value itself: %j', (fault, line, marked, key, expected) => {
    const text = ledgerWith(fault);
    const { ledger, found } = read(text);
    expect(found).toMatchObject([{ rule: 'unexpected-value', line, marked, key, expected }]);
    expect(ledger).toEqual({ revisions: [] });
  });

  it.each(misfits)('is marked at what should not be there: %j', (fault, line, marked, misfit) => {
    const { ledger, found } = read(ledgerWith(fault));
    expect(found).toMatchObject([{ rule: 'unexpected-value', line, marked, misfit }]);
    expect(ledger).toEqual({ revisions: [] });
  });

  it.each(['revisions', 'state', 'pieces', 'steps'])('is marked at a slip in %s', (key) => {
    const { ledger, found } = read(ledgerWith({}).replace(`${key}:`, `${key}x:`));
    expect(found).toMatchObject([{ marked: `${key}x`, misfit: NO_KEY }]);
    expect(ledger).toEqual({ revisions: [] });
  });

  it.each(['measurements', 'steps'])('and at one in %s of an early one', (key) => {
    const early = worded('"front: cut": "3 × 4 in"').replace(`${key}:`, `${key}x:`);
    expect(read(early).found).toMatchObject([{ marked: `${key}x`, misfit: NO_KEY }]);
  });

  it('is marked where a second part begins', () => {
    const text = ledgerWith({}).replace('state:', '---\nstate:');
    expect(read(text).found).toMatchObject([{ rule: 'broken-yaml', line: 9, marked: '---' }]);
  });

  it.each([
    ['an alias of nothing', 'revisions: *nowhere\n'],
    ['an anchor in itself', 'revisions: &a [*a]\n'],
    ['aliases of aliases', `revisions: []\na: &a [x, x, x, x, x, x, x, x, x]\n${bombs()}`],
    ['nothing', ''],
    ['a list', '- a\n'],
    ['a key with nothing behind it', ledgerWith({}).replace('2026-12-08', '')],
    ['no date', ledgerWith({}).replace('    date: 2026-12-08\n', '')],
    ['a change of nothing', ledgerWith({ changes: '{}' })],
    [
      'measurements nobody published',
      worded('"front: place": "on a, 1 in from the left and 1 in from the top, turned 400°"'),
    ],
    ['a negative size in words', worded('front: −5 × 3 in')],
  ])('is found, and stops nothing: %s', (_, text) => {
    expect(read(text).found).toHaveLength(1);
  });
});

function bombs(): string {
  const names = 'abcdefghi'.split('');
  return names
    .slice(1)
    .map((name, index) => `${name}: &${name} [${`*${names[index]}, `.repeat(9)}]\n`)
    .join('');
}

function worded(measurement: string): string {
  return `revisions: []\nstate:\n  measurements: { ${measurement} }\n  steps: []\n`;
}

const lengths = 'inch: [ 1/8 in, 0 in ], metric: [ 3 mm, 0 mm ]';
const sound = [
  ...EDGELESS.map((what) => `what: ${what}, ${lengths}`),
  ...EDGELESS.map((what) => `what: ${what}, word: x`),
  ...EDGES.map((from) => `what: scores, from: ${from}, ${lengths}`),
  'what: size, sheet: lid, inch: [ 39 in, 393 2/3 in ]',
  'what: place, inch: [ -1/8 in, -1 1/8 in ], turn: 0',
  'what: place, word: box.front, turn: 359.999999',
];

describe('a sound pairing', () => {
  it.each(sound)('stands in a ledger, and is written as it was read: %s', (facts) => {
    const { what, before } =
      /^(?<what>what: \w+(?:, (?:from|sheet): \w+)?), (?<before>.+)$/u.exec(facts)?.groups ?? {};
    const changes = `{ piece: card, ${what}, before: { ${before} } }, { piece: card, ${what}, after: {} }`;
    const { ledger, found } = read(ledgerWith({ facts, changes }));
    expect(found).toEqual([]);
    expect(ledger.revisions.at(-1)?.changes).toHaveLength(2);
    expect(read(ledgerText(ledger))).toEqual({ ledger, found: [] });
  });

  it.each(['2026-12-31', '2028-02-29', '2000-02-29'])('is a day that there is: %s', (date) => {
    expect(read(ledgerWith({ date })).found).toEqual([]);
  });

  it('numbers may leave some out', () => {
    expect(read(ledgerWith({ number: '7' })).found).toEqual([]);
  });
});
