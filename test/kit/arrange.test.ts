import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrange } from '../../src/kit/solver/arrange.ts';
import {
  type Blank,
  type CutEdge,
  type CutTree,
  countBlanks,
  longestCut,
  type Rect,
  sideBySide,
  waste,
} from '../../src/kit/solver/cut-tree.ts';
import { gridOf } from '../../src/kit/solver/grid.ts';
import { PatternTable } from '../../src/kit/solver/pattern-table.ts';
import { replay } from './replay.ts';

const SHEET: Rect = { width: 34, height: 44 };

function front(width: number, height: number): CutTree {
  return { width, height, kind: 'blank', blank: 0, turned: false };
}

function strips(from: CutEdge, ...parts: readonly CutTree[]): CutTree {
  return sideBySide(parts, from);
}

function left(width: number, height: number): CutTree {
  return waste({ width, height });
}

/** A part as a line of text: `top[13x18 left[...] ...]`. */
function told(part: CutTree): string {
  if (part.kind === 'blank') return `blank ${part.width}x${part.height}`;
  if (part.kind === 'waste') return `waste ${part.width}x${part.height}`;
  return `${part.from}(${part.parts.map(told).join(', ')})`;
}

describe('strips', () => {
  it('put cuts from the same edge in one row, equal ones together, waste last', () => {
    const [piece, gap] = [front(13, 18), left(4, 18)];
    const tree = strips('left', gap, strips('left', piece, strips('left', gap, piece)));
    expect(told(arrange(tree))).toBe('left(blank 13x18, blank 13x18, waste 8x18)');
  });

  it('cut off waste that neighboring strips end in as one', () => {
    const column = strips('top', front(17, 38), left(17, 6));
    const tree = strips('left', column, column);
    expect(told(arrange(tree))).toBe('top(left(blank 17x38, blank 17x38), waste 34x6)');
  });

  it('leave waste where cutting it off as one would take too long a cut', () => {
    const column = strips('top', front(17, 38), left(17, 6));
    const tree = strips('left', column, column);
    expect(told(arrange(tree, 30))).toBe('left(top(blank 17x38, waste 17x6), top(blank 17x38, waste 17x6))');
  });

  it('are nothing but waste where nothing is cut', () => {
    expect(told(arrange(strips('left', left(5, 44), left(29, 44))))).toBe('waste 34x44');
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
        const again = arrange(tree, longest);
        expect(replay(again, blanks, SHEET)).toHaveLength(replay(tree, blanks, SHEET).length);
        expect(countBlanks(again, blanks.length)).toEqual(countBlanks(tree, blanks.length));
        expect(cutsIn(again)).toBeLessThanOrEqual(cutsIn(tree));
        expect(longestCut(again)).toBeLessThanOrEqual(longest);
        expect(isOrderly(again)).toBe(true);
      }),
      { seed: 5, numRuns: 200 },
    );
  });
});

function cutsIn(tree: CutTree): number {
  return tree.kind === 'strips'
    ? tree.parts.reduce((cuts, part) => cuts + cutsIn(part), tree.parts.length - 1)
    : 0;
}

/** No strip is cut from the edge its part is cut from, waste is last, and equal lengths stand together. */
function isOrderly(part: CutTree): boolean {
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
