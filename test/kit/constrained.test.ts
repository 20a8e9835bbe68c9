import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Wanted } from '../../src/kit/solver/block-search.ts';
import { bestConstrained } from '../../src/kit/solver/constrained.ts';
import { countBlanks } from '../../src/kit/solver/cut-tree.ts';
import { gridOf } from '../../src/kit/solver/grid.ts';
import { Work } from '../../src/kit/solver/work.ts';
import { describeWith } from './published.ts';
import { replay } from './replay.ts';

/** A length along the sheet's first side, one along its second, copies, value. */
type Row = readonly [l: number, w: number, copies: number, value: number];

const PLENTY = 40_000_000;

function wantedOf(sheet: readonly [number, number], rows: readonly Row[], turnable: boolean): Wanted {
  const demand = rows.map(([, , copies]) => copies);
  const blanks = rows.map(([width, height]) => ({ width, height, turnable }));
  const grid = gridOf(blanks, { width: sheet[0], height: sheet[1] }, { demand });
  return { grid, demand, values: rows.map(([, , , value]) => value) };
}

/** Searches, and checks what was found by replaying it: at most the copies allowed, worth what it says. */
function search(wanted: Wanted, pairs: number = PLENTY): ReturnType<typeof bestConstrained> {
  const found = bestConstrained(wanted, pairs, new Work(0));
  replay(found.tree, wanted.grid.blanks, wanted.grid.sheet);
  const counts = countBlanks(found.tree, wanted.grid.blanks.length);
  expect(counts).toEqual(found.counts);
  for (const [index, count] of counts.entries()) expect(count).toBeLessThanOrEqual(wanted.demand[index] ?? 0);
  expect(counts.reduce((total, count, index) => total + count * (wanted.values[index] ?? 0), 0)).toBe(
    found.value,
  );
  return found;
}

/**
 * cgcut1: N. Christofides and C. Whitlock, Operations Research 25 (1977). Optimum 244 as published in the tests of
 * GuillotineModels.jl; 260 where pieces may be turned was computed by exhaustive search, not published.
 */
const CGCUT1: readonly Row[] = [
  [8, 4, 2, 66],
  [3, 7, 1, 35],
  [8, 2, 3, 24],
  [3, 4, 5, 17],
  [3, 3, 2, 11],
  [3, 2, 2, 8],
  [2, 1, 1, 2],
];

/**
 * wang20: P. Y. Wang, Operations Research 31 (1983), sheet 40 × 70. Optimum 2721 from memory of the literature,
 * reproduced by exhaustive search; 2726 is what packing without edge-to-edge cuts reaches.
 */
const WANG20: readonly Row[] = [
  [31, 43, 1, 1333],
  [30, 41, 1, 1230],
  [29, 39, 1, 1131],
  [28, 38, 1, 1064],
  [27, 37, 1, 999],
  [26, 36, 1, 936],
  [25, 35, 2, 875],
  [24, 34, 2, 816],
  [33, 23, 3, 759],
  [22, 32, 2, 704],
  [31, 21, 3, 651],
  [29, 18, 3, 522],
  [17, 27, 2, 459],
  [16, 25, 4, 400],
  [15, 24, 2, 360],
  [15, 24, 1, 360],
  [23, 14, 4, 322],
  [21, 12, 3, 252],
  [19, 11, 4, 209],
  [9, 17, 1, 153],
];

describe('the best pattern with few copies of each', () => {
  it('reaches the published optimum of cgcut1', () => {
    expect(search(wantedOf([15, 10], CGCUT1, false))).toMatchObject({ value: 244, bound: 244 });
    expect(search(wantedOf([15, 10], CGCUT1, true))).toMatchObject({ value: 260, bound: 260 });
  });

  it('reaches the optimum of wang20 by edge-to-edge cuts, and not the higher one of free packing', () => {
    expect(search(wantedOf([40, 70], WANG20, false))).toMatchObject({ value: 2721, bound: 2721 });
  });

  it('gives its best and an honest bound when the budget ends', () => {
    const found = search(wantedOf([40, 70], WANG20, false), 300);
    expect(found.value).toBeLessThanOrEqual(2721);
    expect(found.bound).toBeGreaterThanOrEqual(2721);
  });

  it('agrees with trying every choice of blanks on small sheets', () => {
    const side = fc.integer({ min: 1, max: 5 });
    const row = fc.tuple(side, side, fc.integer({ min: 0, max: 2 }), fc.integer({ min: 0, max: 9 }));
    fc.assert(
      fc.property(
        fc.array(row, { minLength: 1, maxLength: 3 }),
        fc.tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 1, max: 7 })),
        fc.boolean(),
        (rows, sheet, turnable) => {
          const wanted = wantedOf(sheet, rows, turnable);
          const found = search(wanted);
          expect([found.value, found.bound]).toEqual([everyChoice(wanted), found.value]);
        },
      ),
      { seed: 5, numRuns: 200 },
    );
  });
});

/** The best value by trying, for every part, every cut and every division of the copies between its two sides. */
function everyChoice({ grid: { blanks, sheet }, values, demand }: Wanted): number {
  const known = new Map<string, boolean>();
  const canCut = (width: number, height: number, counts: readonly number[]): boolean => {
    const total = counts.reduce((sum, count) => sum + count, 0);
    if (total === 0) return true;
    if (total === 1) {
      const { width: w = 0, height: h = 0, turnable = false } = blanks[counts.indexOf(1)] ?? {};
      if ((w <= width && h <= height) || (turnable && h <= width && w <= height)) return true;
      return false;
    }
    const key = `${width} ${height} ${counts.join()}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    known.set(key, false);
    const possible = divisions(counts).some(([near, far]) => {
      for (let cut = 1; cut < width; cut += 1)
        if (canCut(cut, height, near) && canCut(width - cut, height, far)) return true;
      for (let cut = 1; cut < height; cut += 1)
        if (canCut(width, cut, near) && canCut(width, height - cut, far)) return true;
      return false;
    });
    known.set(key, possible);
    return possible;
  };
  return Math.max(
    ...choices(demand).map((counts) =>
      canCut(sheet.width, sheet.height, counts)
        ? counts.reduce((total, count, index) => total + count * (values[index] ?? 0), 0)
        : 0,
    ),
  );
}

function choices(most: readonly number[]): number[][] {
  return most.reduce<number[][]>(
    (before, count) =>
      before.flatMap((each) => Array.from({ length: count + 1 }, (_, taken) => [...each, taken])),
    [[]],
  );
}

/** Every way to divide copies in two parts that both get some. */
function divisions(counts: readonly number[]): (readonly [number[], number[]])[] {
  return choices(counts)
    .map((near) => [near, counts.map((count, index) => count - (near[index] ?? 0))] as const)
    .filter(([near, far]) => near.some((count) => count > 0) && far.some((count) => count > 0));
}

type Instance = {
  readonly name: string;
  readonly sheet: { readonly l: number; readonly w: number };
  readonly items: readonly {
    readonly l: number;
    readonly w: number;
    readonly maxCopies: number;
    readonly value: number;
  }[];
  readonly optimumGuillotineFixed: number;
  readonly bestNonGuillotine?: number;
};

/** Sources of instances and optima stand in the file, instance by instance. */
describeWith<{ instances: readonly Instance[] }>(
  'guillotine-constrained.json',
  'published instances with few copies of each',
  ({ instances }) => {
    it.each(instances.map((instance) => [instance.name, instance] as const))(
      'never passes the optimum of %s',
      (_, instance) => {
        const rows = instance.items.map(({ l, w, maxCopies, value }): Row => [l, w, maxCopies, value]);
        const found = search(wantedOf([instance.sheet.l, instance.sheet.w], rows, false));
        expect(found).toMatchObject({
          value: instance.optimumGuillotineFixed,
          bound: instance.optimumGuillotineFixed,
        });
      },
    );

    it('has the optima as published', () => {
      const optima = Object.fromEntries(instances.map((each) => [each.name, each.optimumGuillotineFixed]));
      expect(optima).toMatchObject({ cgcut1: 244, cgcut2: 2892, cgcut3: 1860, 'wang20 (40x70)': 2721 });
    });
  },
);
