import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Blank,
  type CutTree,
  countBlanks,
  longestCut,
  type Rect,
  WASTE,
} from '../../src/kit/guillotine/blank.ts';
import { gridOf } from '../../src/kit/guillotine/grid.ts';
import { PatternTable } from '../../src/kit/guillotine/pattern-table.ts';
import { type Part, treeOfPart } from '../../src/kit/layout/part.ts';
import { stripsOf } from '../../src/kit/layout/strips.ts';
import { replay } from './replay.ts';

const SHEET: Rect = { width: 34, height: 44 };
const FRONT: CutTree = { kind: 'blank', blank: 0, turned: false };

function cut(from: 'left' | 'top', at: number, near: CutTree, far: CutTree): CutTree {
  return { kind: 'cut', from, at, near, far };
}

/** A part as a line of text: `top[13x18 left[...] ...]`. */
function told(part: Part): string {
  if (part.kind === 'piece') return `piece ${part.width}x${part.height}`;
  if (part.kind === 'waste') return `waste ${part.width}x${part.height}`;
  return `${part.from}(${part.parts.map(told).join(', ')})`;
}

describe('strips', () => {
  it('put cuts from the same edge in one row, equal ones together, waste last', () => {
    const tree = cut('left', 4, WASTE, cut('left', 13, FRONT, cut('left', 4, WASTE, FRONT)));
    expect(told(stripsOf(tree, { width: 34, height: 18 }))).toBe(
      'left(piece 13x18, piece 13x18, waste 8x18)',
    );
  });

  it('cut off waste that neighbouring strips end in as one', () => {
    const column = (waste: number): CutTree => cut('top', 44 - waste, FRONT, WASTE);
    const tree = cut('left', 17, column(6), column(6));
    expect(told(stripsOf(tree, SHEET))).toBe('top(left(piece 17x38, piece 17x38), waste 34x6)');
  });

  it('leave waste where cutting it off as one would take too long a cut', () => {
    const column = cut('top', 38, FRONT, WASTE);
    const tree = cut('left', 17, column, column);
    expect(told(stripsOf(tree, SHEET, 30))).toBe(
      'left(top(piece 17x38, waste 17x6), top(piece 17x38, waste 17x6))',
    );
  });

  it('are nothing but waste where nothing is cut', () => {
    expect(told(stripsOf(cut('left', 5, WASTE, WASTE), SHEET))).toBe('waste 34x44');
  });

  it('keep every piece, stay within the sheet, and make no more cuts and none longer than allowed', () => {
    const side = fc.integer({ min: 3, max: 20 });
    const blank: fc.Arbitrary<Blank> = fc.record({ width: side, height: side, turnable: fc.boolean() });
    fc.assert(
      fc.property(fc.array(blank, { minLength: 1, maxLength: 5 }), fc.boolean(), (blanks, isLimited) => {
        const longest = isLimited ? 44 : Number.POSITIVE_INFINITY;
        const tree = new PatternTable(
          gridOf(blanks, SHEET, { longest }),
          blanks.map(({ width, height }) => width * height),
        ).tree();
        const part = stripsOf(tree, SHEET, longest);
        const again = treeOfPart(part);
        expect(replay(again, blanks, SHEET)).toHaveLength(replay(tree, blanks, SHEET).length);
        expect(countBlanks(again, blanks.length)).toEqual(countBlanks(tree, blanks.length));
        expect(cutsIn(again)).toBeLessThanOrEqual(cutsIn(tree));
        expect(longestCut(again, SHEET)).toBeLessThanOrEqual(longest);
        expect(isOrderly(part)).toBe(true);
      }),
      { seed: 5, numRuns: 200 },
    );
  });
});

function cutsIn(tree: CutTree): number {
  return tree.kind === 'cut' ? 1 + cutsIn(tree.near) + cutsIn(tree.far) : 0;
}

/** No strip is cut from the edge its part is cut from, waste is last, and equal lengths stand together. */
function isOrderly(part: Part): boolean {
  if (part.kind !== 'strips') return true;
  const lengths = part.parts.flatMap((each) =>
    each.kind === 'waste' ? [] : [part.from === 'left' ? each.width : each.height],
  );
  const changes = lengths.filter((length, index) => index > 0 && length !== lengths[index - 1]).length;
  return (
    part.parts.every((each) => each.kind !== 'strips' || each.from !== part.from) &&
    part.parts.slice(0, -1).every(({ kind }) => kind !== 'waste') &&
    changes === new Set(lengths).size - 1 &&
    part.parts.every(isOrderly)
  );
}
