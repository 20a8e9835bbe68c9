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
        'does-not-nest at "box.front": box.lid has 1/8 in to spare round box.front and box.back; the paper there, with plate and other stuck on it, takes 0.165 in; give box a "clearance" of 1/4 in, or leave plate and other off',
      ],
    ],
    [
      'one on the other',
      'plate: { stock: board, cut: 3 3/4 x 1 3/4, on: box.front }\nother: { stock: thin, cut: 2 x 1, on: plate }',
      [
        'does-not-nest at "box.front": box.lid has 1/8 in to spare round box.front and box.back; the paper there, with plate and other stuck on it, takes 0.134 in; give box a "clearance" of 1/4 in, or leave plate and other off',
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
      expect.stringContaining('box.sleeve has 1/8 in to spare round box.drawer-left and box.drawer-right'),
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
      'too-thick-to-fold at "accordion card": card is 3 mm thick and folded flat on itself along 3 single lines; more than 1 mm does not fold so; make each fold a spine of two lines 3 mm apart, folded by 90 degrees each, or take a thinner stock',
    ]);
    expect(folded('1.2 mm', 'single-fold card, size: 3 x 4')).toHaveLength(1);
  });

  it('is as far as a millimeter goes, and stands as a box', () => {
    expect(folded('1 mm', 'single-fold card, size: 3 x 4')).toEqual([]);
    expect(folded('3 mm', 'tray, inside: 4 x 3 x 2')).toEqual([]);
  });
});
