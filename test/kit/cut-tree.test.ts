import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type CutTree,
  clipped,
  countBlanks,
  inCorner,
  leavesOf,
  longestCut,
  shapeOf,
  sideBySide,
  waste,
} from '../../src/kit/solver/cut-tree.ts';
import { replay } from './replay.ts';

const KINDS = [
  { width: 3, height: 5, turnable: true },
  { width: 4, height: 2, turnable: true },
];

function blankOf(blank: number, turned: boolean): CutTree {
  const { width, height } = KINDS[blank] ?? { width: 0, height: 0 };
  return { ...(turned ? { width: height, height: width } : { width, height }), kind: 'blank', blank, turned };
}

/** Any tree: a blank, or two trees side by side, the smaller one in a corner as large as the other. */
const tree: fc.Arbitrary<CutTree> = fc.letrec<{ tree: CutTree; leaf: CutTree; row: CutTree }>((tie) => ({
  tree: fc.oneof({ depthSize: 'medium' }, tie('leaf'), tie('row')),
  leaf: fc
    .tuple(fc.integer({ min: 0, max: 1 }), fc.boolean())
    .map(([blank, turned]) => blankOf(blank, turned)),
  row: fc
    .tuple(tie('tree'), tie('tree'), fc.constantFrom('left' as const, 'top' as const))
    .map(([one, other, from]) => {
      const across = from === 'left' ? 'height' : 'width';
      const most = Math.max(one[across], other[across]);
      return sideBySide(
        [one, other].map((each) => inCorner(each, { ...each, [across]: most })),
        from,
      );
    }),
})).tree;

function areaOf({ width, height }: CutTree): number {
  return width * height;
}

describe('a tree of cuts', () => {
  it('can be cut, and its leaves cover it exactly', () => {
    fc.assert(
      fc.property(tree, (whole) => {
        replay(whole, KINDS, whole);
        expect(leavesOf(whole).reduce((sum, leaf) => sum + areaOf(leaf), 0)).toBe(areaOf(whole));
      }),
      { seed: 5, numRuns: 200 },
    );
  });

  it('keeps its blanks in the corner of a larger room, cut off from the left unless that cut is too long', () => {
    const more = fc.integer({ min: 1, max: 9 });
    fc.assert(
      fc.property(tree, more, more, fc.boolean(), (whole, right, below, isLong) => {
        const room = { width: whole.width + right, height: whole.height + below };
        const wider = inCorner(whole, room, isLong ? room.height - 1 : room.height);
        expect(wider).toMatchObject({ kind: 'strips', from: isLong ? 'top' : 'left' });
        expect(countBlanks(wider, 2)).toEqual(countBlanks(whole, 2));
        replay(wider, KINDS, room);
      }),
      { seed: 5, numRuns: 200 },
    );
  });

  it('loses only what is too much, and nothing of its size', () => {
    fc.assert(
      fc.property(tree, fc.tuple(fc.nat(3), fc.nat(3)), (whole, most) => {
        const less = clipped(whole, most);
        const expected = countBlanks(whole, 2).map((count, kind) => Math.min(count, most[kind] ?? 0));
        expect(countBlanks(less, 2)).toEqual(expected);
        replay(less, KINDS, whole);
      }),
      { seed: 5, numRuns: 200 },
    );
  });

  it.each([
    ['a blank', blankOf(0, false), '3 x 5 blank 0'],
    ['waste', waste({ width: 7, height: 2 }), '7 x 2'],
    [
      'a row',
      sideBySide([blankOf(0, false), blankOf(0, false)], 'left'),
      '6 x 5 left [3 x 5 blank 0, 3 x 5 blank 0]',
    ],
  ])('says the shape of %s', (_, whole, shape) => {
    expect(shapeOf(whole)).toBe(shape);
  });

  it('is one part where nothing stands beside it, and none of nothing', () => {
    expect(sideBySide([blankOf(1, false)], 'top')).toEqual(blankOf(1, false));
    expect(() => sideBySide([], 'top')).toThrow('nothing');
    expect(longestCut(blankOf(0, false))).toBe(0);
  });
});
