import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Blank, countBlanks, type Rect } from '../../src/kit/solver/cut-tree.ts';
import { gridOf } from '../../src/kit/solver/grid.ts';
import { PatternTable } from '../../src/kit/solver/pattern-table.ts';
import { describeWith } from './published.ts';
import { replay } from './replay.ts';

type Instance = {
  readonly name: string;
  readonly sheet: { readonly l: number; readonly w: number };
  readonly items: readonly { readonly l: number; readonly w: number; readonly value: number }[];
  readonly optimum: { readonly fixedOrientation: number; readonly rotationAllowed: number };
};

/** Cuts a sheet for the best value, checks the tree by replaying it, and gives the value. */
function bestValue(blanks: readonly Blank[], sheet: Rect, values: readonly number[]): number {
  const table = new PatternTable(gridOf(blanks, sheet), values);
  const placed = replay(table.tree(), blanks, sheet);
  const counts = countBlanks(table.tree(), blanks.length);
  expect(placed).toHaveLength(counts.reduce((total, count) => total + count, 0));
  expect(counts.reduce((total, count, index) => total + count * (values[index] ?? 0), 0)).toBe(table.value);
  return table.value;
}

/**
 * J. E. Beasley, "Algorithms for unconstrained two-dimensional guillotine cutting", J. Opl Res. Soc. 36 (1985);
 * optima: G. Cintra, https://www.ime.usp.br/~glauber/gcut/. Instances: JeroenGar/datasets, CC0-1.0.
 */
describeWith<{ instances: readonly Instance[] }>(
  'guillotine-unconstrained-gcut.json',
  'gcut1 to gcut6, any number of copies',
  ({ instances }) => {
    it.each(instances.map((instance) => [instance.name, instance] as const))(
      'reaches the published optima of %s, fixed and turnable',
      (_, { sheet, items, optimum }) => {
        const values = items.map(({ value }) => value);
        const cut = (turnable: boolean): number =>
          bestValue(
            items.map(({ l, w }) => ({ width: l, height: w, turnable })),
            { width: sheet.l, height: sheet.w },
            values,
          );
        expect([cut(false), cut(true)]).toEqual([optimum.fixedOrientation, optimum.rotationAllowed]);
      },
    );

    it('has six instances', () => {
      expect(instances.map(({ optimum }) => optimum.fixedOrientation)).toEqual([
        56460, 60536, 61036, 61698, 246000, 238998,
      ]);
    });
  },
);

describe('the table of best patterns', () => {
  it('cuts nothing where nothing fits or nothing is worth anything', () => {
    const blanks = [{ width: 5, height: 9, turnable: false }];
    expect(bestValue(blanks, { width: 9, height: 5 }, [7])).toBe(0);
    expect(bestValue(blanks, { width: 9, height: 9 }, [0])).toBe(0);
    expect(bestValue([{ width: 5, height: 9, turnable: true }], { width: 9, height: 5 }, [7])).toBe(7);
  });

  it('makes no cut longer than allowed, and needs the allowance', () => {
    const blanks = [{ width: 4, height: 6, turnable: false }];
    const sheet = { width: 8, height: 12 };
    const cut = (longest: number): number => new PatternTable(gridOf(blanks, sheet, { longest }), [1]).value;
    expect(cut(12)).toBe(4);
    // The sheet is halved by cuts of 8, then each half by cuts of 6.
    expect(cut(8)).toBe(4);
    expect(cut(7)).toBe(0);
  });

  it('agrees with trying every way to cut small sheets', () => {
    const side = fc.integer({ min: 1, max: 5 });
    const blank = fc.record({ width: side, height: side, turnable: fc.boolean() });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(blank, fc.integer({ min: 0, max: 9 })), { minLength: 1, maxLength: 4 }),
        fc.record({ width: fc.integer({ min: 1, max: 9 }), height: fc.integer({ min: 1, max: 9 }) }),
        (priced, sheet) => {
          const blanks = priced.map(([each]) => each);
          const values = priced.map(([, value]) => value);
          expect(bestValue(blanks, sheet, values)).toBe(everyWay(blanks, sheet, values));
        },
      ),
      { seed: 5, numRuns: 300 },
    );
  });

  it('gives a smaller value, never a wrong one, where positions are left out', () => {
    const side = fc.integer({ min: 2, max: 9 });
    fc.assert(
      fc.property(
        fc.array(fc.record({ width: side, height: side, turnable: fc.boolean() }), {
          minLength: 3,
          maxLength: 6,
        }),
        (blanks) => {
          const sheet = { width: 31, height: 29 };
          const values = blanks.map(({ width, height }) => width * height);
          const few = new PatternTable(gridOf(blanks, sheet, { most: 9 }), values);
          replay(few.tree(), blanks, sheet);
          expect(few.value).toBeLessThanOrEqual(new PatternTable(gridOf(blanks, sheet), values).value);
        },
      ),
      { seed: 5, numRuns: 100 },
    );
  });
});

/** The best value by trying every whole cut of every part: slow, plain, and written without the grid. */
function everyWay(blanks: readonly Blank[], sheet: Rect, values: readonly number[]): number {
  const known = new Map<string, number>();
  const best = (width: number, height: number): number => {
    const key = `${width} ${height}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    let most = 0;
    blanks.forEach((blank, index) => {
      const fits = blank.width <= width && blank.height <= height;
      const fitsTurned = blank.turnable && blank.height <= width && blank.width <= height;
      if (fits || fitsTurned) most = Math.max(most, values[index] ?? 0);
    });
    for (let cut = 1; cut < width; cut += 1)
      most = Math.max(most, best(cut, height) + best(width - cut, height));
    for (let cut = 1; cut < height; cut += 1)
      most = Math.max(most, best(width, cut) + best(width, height - cut));
    known.set(key, most);
    return most;
  };
  return best(sheet.width, sheet.height);
}
