import { describe, expect, it } from 'vitest';
import { blamed, ofRule } from './workspace.ts';

const STOCK = 'cream: { sheet: 8 1/2 x 11 }\nfern: { sheet: 12 x 12, print: upright }';
const CARD = 'card: { stock: cream, cut: 4 1/4 x 5 1/2 }';

describe('turned-print', () => {
  const found = (front: string, ...more: string[]): string[] =>
    ofRule('turned-print', { stock: STOCK, pieces: [CARD, front, ...more].join('\n') }).map(
      (finding) => `${blamed(finding)}: ${finding.message}; ${finding.remedy}`,
    );

  it.each<[string, string[]]>([
    [
      'front: { stock: fern, cut: 5 1/4 x 4, on: card, turn: 90 }',
      [
        '90: front is turned by 90°, so that its print lies on its side; cut it 4 × 5 1/4 in and leave "turn:" out, or give fern "print: any way"',
      ],
    ],
    [
      'front: { stock: fern, cut: 4 x 5 1/4, on: card, at: { turn: 180 } }',
      ['180: front is turned halfway round, so that its print hangs upside down; leave "turn:" out'],
    ],
    ['front: { stock: fern, cut: 4 x 5 1/4, on: card }', []],
    ['front: { stock: fern, cut: 2 x 2, on: card, turn: 45 }', []],
    ['front: { stock: fern, cut: 4 x 5 1/4, on: card, turn: 0 }', []],
    ['front: { stock: cream, cut: 5 1/4 x 4, on: card, turn: 90 }', []],
  ])('%s', (front, expected) => {
    expect(found(front)).toEqual(expected);
  });

  it('counts what a piece lies on: two quarter turns against each other are none', () => {
    const base = 'mat: { stock: cream, cut: 5 1/4 x 4, on: card, turn: 90 }';
    expect(found(base, 'front: { stock: fern, cut: 3 x 5, on: mat, turn: -90 }')).toEqual([]);
    expect(found(base, 'front: { stock: fern, cut: 5 x 3, on: mat, turn: 90 }')).toHaveLength(1);
  });

  it.each([
    [
      90,
      'front: front lies on mat, which is turned, and so is itself turned by 90°: its print lies on its side; cut it 5 × 3 in and give it "turn: -90", or give fern "print: any way"',
    ],
    [
      180,
      'front: front lies on mat, which is turned, and so is itself turned halfway round: its print hangs upside down; give it "turn: 180", or give fern "print: any way"',
    ],
  ])('is seen on a base that is turned by %s', (turn, expected) => {
    const base = (stock: string): string =>
      `mat: { stock: ${stock}, cut: 4 x 5 1/4, on: card, turn: ${turn} }`;
    expect(found(base('cream'), 'front: { stock: fern, cut: 3 x 5, on: mat }')).toEqual([expected]);
    expect(found(base('fern'), 'front: { stock: fern, cut: 3 x 5, on: mat }')).toHaveLength(1);
  });
});

describe('fold-across-grain', () => {
  const found = (stock: string, piece: string): string[] =>
    ofRule('fold-across-grain', {
      stock: `cream: { ${stock} }`,
      pieces: `card: { stock: cream, ${piece} }`,
    }).map(({ severity, message }) => `${severity}: ${message}`);
  const LEFT = 'cut: 8 x 5, score: [{ from: left, at: [4] }], panels: { a: A1, b: B1 }';
  const TOP = 'cut: 5 x 8, score: [{ from: top, at: [4] }], panels: { a: A1, b: A2 }';
  const ACROSS = 'note: every fold of card runs across the fibers of cream, which is 0.011 in thick';

  // A line from the left edge stands upright: fibers along the width cross it, fibers along the height don't.
  it.each<[string, string, string[]]>([
    ['weight: 100 lb cover, grain: width', LEFT, [ACROSS]],
    ['weight: 100 lb cover, grain: height', LEFT, []],
    ['weight: 100 lb cover, grain: height', TOP, [ACROSS]],
    ['weight: 100 lb cover, grain: width', TOP, []],
    ['weight: 80 lb cover, grain: width', LEFT, []],
    ['weight: 100 lb cover', LEFT, []],
    // Nothing is known of its thickness.
    ['sheet: 8 1/2 x 11, grain: width', LEFT, []],
    ['caliper: 0.3 mm, grain: width', 'form: tray, inside: 3 x 3 x 1', []],
    ['caliper: 0.3 mm, grain: width', 'cut: 8 x 5', []],
  ])('%s, %s', (stock, piece, expected) => {
    expect(found(stock, piece)).toEqual(expected);
  });
});
