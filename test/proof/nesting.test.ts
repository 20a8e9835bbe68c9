import { describe, expect, it } from 'vitest';
import { sheetWith } from './sheet-with.ts';
import { blamed, findingsOf } from './workspace.ts';

const STOCK = [
  'cream: { name: Cream cardstock, sheet: 12 x 18, caliper: 0.01 in }',
  'board: { name: Gray board, sheet: 12 x 18, caliper: 1/16 in }',
  'thin: { name: Thin board, sheet: 12 x 18, caliper: 1/32 in }',
].join('\n');

const said = (pieces: string, stock = STOCK): string[] =>
  findingsOf(sheetWith({ stock, pieces }))
    .filter(({ rule }) => rule === 'does-not-nest' || rule === 'too-thick-to-fold')
    .map((each) => `${each.rule} at "${blamed(each)}": ${each.message}; ${each.remedy}`);

const TRAY = 'box: { stock: cream, form: lidded tray, inside: 4 x 4 x 2, lid: 1 }';
const DRAWER = 'box: { stock: cream, form: slide box, inside: 2 1/4 x 3 3/4 x 3/4 }';

/**
 * A lid is 1/8 in wider than its tray. Half a thickness of 0.01 in on either side of both makes 0.02 in; inside its front
 * and back lie its tabs, 0.02 in more. Geometry, no source needed.
 */
describe('what is stuck on a tray', () => {
  it.each([
    ['on the front alone, 1/16 in thick', 'plate: { stock: board, cut: 3 3/4 x 1 3/4, on: box.front }', []],
    [
      'on the front and on the back',
      'plate: { stock: board, cut: 3 3/4 x 1 3/4, on: box.front }\nother: { stock: board, cut: 3 3/4 x 1 3/4, on: box.back }',
      [
        'does-not-nest at "box.front": box.lid has 1/8 in to spare around box.front and box.back; the paper there, with plate and other stuck on it, takes ≈3/16 in; give box a "clearance" of 1/4 in, or leave plate and other off',
      ],
    ],
    [
      'one on the other',
      'plate: { stock: board, cut: 3 3/4 x 1 3/4, on: box.front }\nother: { stock: thin, cut: 2 x 1, on: plate }',
      [
        'does-not-nest at "box.front": box.lid has 1/8 in to spare around box.front and box.back; the paper there, with plate and other stuck on it, takes ≈5/32 in; give box a "clearance" of 1/4 in, or leave plate and other off',
      ],
    ],
    [
      'of which only the thicker counts on one wall',
      'plate: { stock: board, cut: 1 x 1 3/4, on: box.front, at: { left: 1/8 } }\nother: { stock: board, cut: 1 x 1 3/4, on: box.front, at: { right: 1/8 } }',
      [],
    ],
    [
      'lower than the lid comes down',
      'plate: { stock: board, cut: 3 3/4 x 3/4, on: box.front, at: { bottom: 1/8 } }\nother: { stock: board, cut: 3 3/4 x 3/4, on: box.back, at: { top: 1/8 } }',
      [],
    ],
    [
      'at the sides, where the lid has no tabs',
      'plate: { stock: board, cut: 1 3/4 x 3 3/4, on: box.left }\nother: { stock: thin, cut: 1 3/4 x 3 3/4, on: box.right }',
      [],
    ],
    [
      'on the lid itself',
      'plate: { stock: board, cut: 3 x 3, on: box.top }\nother: { stock: board, cut: 2 x 2, on: plate }',
      [],
    ],
  ])('%s', (_, layers, expected) => {
    expect(said(`${TRAY}\n${layers}`)).toEqual(expected);
  });
});

describe('what is stuck on a drawer', () => {
  it('is in the way of its sleeve on its sides and under it, and not on its front', () => {
    const on = (first: string, second: string, cut: string): string[] =>
      said(
        `${DRAWER}\none: { stock: board, cut: ${cut}, on: box.${first} }\ntwo: { stock: board, cut: ${cut}, on: box.${second} }`,
      );
    expect(on('drawer-left', 'drawer-right', '1/2 x 3 1/2')).toEqual([
      expect.stringContaining('box.sleeve has 1/8 in to spare around box.drawer-left and box.drawer-right'),
    ]);
    expect(on('front', 'back', '2 x 1/2')).toEqual([]);
    expect(
      said(
        `${DRAWER}\none: { stock: board, cut: 2 x 3, on: box.drawer-floor }\ntwo: { stock: board, cut: 1 x 2, on: one }`,
      ),
    ).toHaveLength(1);
  });
});

describe('thick board', () => {
  const folded = (caliper: string, form: string): string[] =>
    said(
      `card: { stock: board, form: ${form} }`,
      `board: { name: Gray board, sheet: 12 x 18, caliper: ${caliper} }`,
    );

  it('is not folded flat along a single line', () => {
    expect(folded('3 mm', 'accordion card, size: 3 x 4')).toEqual([
      'too-thick-to-fold at "accordion card": card is 0.118 in thick and folded flat on itself along 3 single lines; more than 1 mm does not fold that way; make each fold a spine of two lines 0.118 in apart, folded by 90 degrees each, or take a thinner stock',
    ]);
    expect(folded('1.2 mm', 'single-fold card, size: 3 x 4')).toHaveLength(1);
  });

  it('is as far as a millimeter goes, and stands as a box', () => {
    expect(folded('1 mm', 'single-fold card, size: 3 x 4')).toEqual([]);
    expect(folded('3 mm', 'tray, inside: 4 x 3 x 2')).toEqual([]);
  });
});

/**
 * Two sheets of 0.01 in take 0.02 in, and tabs inside two walls of the lid 0.02 in more that way. A lid slides with 1/16 in
 * besides: the next eighth is 1/8 in. Geometry, but for the play, which is common practice.
 */
describe('a lid and a base by their score lines', () => {
  const tray = (id: string, cut: string): string => `${id}:
  stock: cream
  cut: ${cut}
  score: [{ from: left, at: [1] }, { from: right, at: [1] }, { from: top, at: [1] }, { from: bottom, at: [1] }]
  slit: [A|B 1, A|B 3, B|C 1, B|C 3]
  glue: { A1: B1, C1: B1, A3: B3, C3: B3 }`;
  const told = (...pieces: string[]): string[] =>
    findingsOf(
      sheetWith({ stock: 'cream: { sheet: 12 x 12, caliper: 1/100 in }', pieces: pieces.join('\n') }),
    )
      .filter(({ rule }) => rule === 'lid-too-small')
      .map(({ message, remedy }) => `${message}; ${remedy}`);

  it.each<[string, string[], string[]]>([
    [
      'of one size',
      [tray('base', '6 x 5'), tray('lid', '6 x 5')],
      [
        'lid is 4 × 3 in between its walls and base 4 × 3 in, so it does not fit over it; make lid 1/8 in wider and 1/8 in longer than base between its walls',
      ],
    ],
    [
      'that differ one way only, and lie turned on their sheets',
      [tray('base', '6 x 5'), tray('box-lid', '5 x 6 1/8')],
      [
        'box-lid is 3 × 4 1/8 in between its walls and base 4 × 3 in, so it does not fit over it; make box-lid 1/8 in wider and 1/8 in longer than base between its walls',
      ],
    ],
    ['of which the lid is larger', [tray('base', '6 x 5'), tray('lid', '6 1/16 x 5 1/16')], []],
    [
      'of which the lid leaves no room for its tabs',
      [tray('bottom', '6 x 5'), tray('top', '6 1/32 x 5 1/32')],
      [
        'top is 4 1/32 × 3 1/32 in between its walls and bottom 4 × 3 in, so it does not fit over it; make top 1/8 in wider and 1/8 in longer than bottom between its walls',
      ],
    ],
    [
      'of which the lid goes in',
      [tray('base', '6 x 5'), tray('lid', '5 7/8 x 4 7/8')],
      [
        'lid is 3 7/8 × 2 7/8 in between its walls and base 4 × 3 in: it goes into it, and not over it; make lid 1/8 in wider and 1/8 in longer than base between its walls, or call it something else if it is to go in',
      ],
    ],
    ['that are two of a kind', [tray('left', '6 x 5'), tray('right', '6 x 5')], []],
    ['with a third', [tray('base', '6 x 5'), tray('lid', '6 x 5'), tray('insert', '5 x 4')], []],
    ['far from one size', [tray('base', '6 x 5'), tray('lid', '4 x 4')], []],
  ])('%s', (_, pieces, expected) => {
    expect(told(...pieces)).toEqual(expected);
  });
});
