import { describe, expect, it } from 'vitest';
import { countBlanks } from '../../src/kit/solver/cut-tree.ts';
import { gridOf } from '../../src/kit/solver/grid.ts';
import { planSheets, type SheetPlan, type Standing } from '../../src/kit/solver/plan-sheets.ts';
import { type CuttingProblem, sheetsIn } from '../../src/kit/solver/problem.ts';
import { Work } from '../../src/kit/solver/work.ts';
import { loadHighs } from '../../src/shape/highs.ts';
import { describeWith } from './published.ts';
import { replay } from './replay.ts';

const highs = await loadHighs();

/** Plans, and checks the plan by replaying each of its sheets: exactly what is wanted is cut. */
function plan(
  problem: CuttingProblem,
  millions: number,
  isEnough = (_: Standing): boolean => false,
): SheetPlan {
  const work = new Work(millions * 1e6);
  const planned = planSheets(problem, {
    highs,
    work,
    progress: (standing) => {
      if (isEnough(standing)) work.spend(Number.POSITIVE_INFINITY);
    },
  });
  const cut = problem.blanks.map(() => 0);
  for (const { pattern, count } of planned.batches) {
    const sheet = problem.sheets[pattern.sheet];
    if (!sheet) throw new Error('a pattern of no sheet');
    replay(pattern.tree, problem.blanks, sheet);
    const counts = countBlanks(pattern.tree, problem.blanks.length);
    expect(counts).toEqual(pattern.counts);
    for (const [blank, each] of counts.entries()) cut[blank] = (cut[blank] ?? 0) + each * count;
  }
  for (const [blank, wanted] of problem.demand.entries()) expect(cut[blank]).toBe(wanted);
  expect(planned.cost).toBeGreaterThanOrEqual(planned.bound);
  return planned;
}

/**
 * J. O. Berkey and P. Y. Wang, J. Opl Res. Soc. 38 (1987), class 1, 20 items, sheets 10 × 10; instances as in
 * fontanf/packingsolver (MIT License, Copyright (c) 2020 Florian Fontan). Fewest sheets: the tables of the same
 * repository, for guillotine cuts; fixed orientation, then turnable.
 */
const BERKEY_WANG_1: readonly (readonly [number, number])[] = [
  [5, 9],
  [4, 2],
  [10, 6],
  [5, 7],
  [6, 3],
  [10, 7],
  [1, 5],
  [3, 5],
  [6, 9],
  [2, 4],
  [6, 7],
  [7, 2],
  [8, 3],
  [4, 10],
  [4, 5],
  [10, 3],
  [8, 3],
  [7, 8],
  [8, 3],
  [8, 7],
];

describe('the fewest sheets', () => {
  it('are those published for an instance of Berkey and Wang', () => {
    for (const [turnable, fewest] of [
      [false, 8],
      [true, 7],
    ] as const) {
      const problem = {
        blanks: BERKEY_WANG_1.map(([width, height]) => ({ width, height, turnable })),
        demand: BERKEY_WANG_1.map(() => 1),
        sheets: [{ width: 10, height: 10, cost: 1 }],
      };
      const planned = plan(problem, 10);
      expect(planned).toMatchObject({ cost: fewest, bound: fewest });
      expect(sheetsIn(planned.batches)).toBe(fewest);
    }
  });
});

/** Twenty kinds of pieces on a letter sheet in sixteenths of an inch, 200 of each. */
function largeProblem(seed: number, turnable: boolean): CuttingProblem {
  let state = seed;
  const below = (most: number): number => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return Math.floor((state / 4294967296) * most);
  };
  const blanks = Array.from({ length: 20 }, () => ({
    width: 8 + below(72),
    height: 8 + below(90),
    turnable,
  }));
  return { blanks, demand: blanks.map(() => 200), sheets: [{ width: 136, height: 176, cost: 1 }] };
}

describe('20 kinds of pieces for 200 people', () => {
  it.each([
    [1, false],
    [2, true],
  ] as const)('take at most one sheet more than proven (%i)', (seed, turnable) => {
    const { cost, bound } = plan(
      largeProblem(seed, turnable),
      60,
      (standing) => standing.cost - standing.bound <= 1,
    );
    expect(cost - bound).toBeLessThanOrEqual(1);
  });
});

describe('sizes with hardly a common measure', () => {
  /** Primes: nearly every position on the sheet is a sum of some of them. */
  const blanks = [101, 127, 157, 191, 223, 257, 293, 331].map((width, index) => ({
    width,
    height: [109, 137, 163, 197, 229, 263, 307, 337][index] ?? 0,
    turnable: index % 2 === 0,
  }));

  it('leave positions out, and claim no bound that leans on them', () => {
    const sheet = { width: 3048, height: 3048, cost: 1 };
    const grid = gridOf(blanks, sheet);
    expect(grid.exact).toBe(false);
    const planned = plan({ blanks, demand: blanks.map(() => 60), sheets: [sheet] }, 3);
    const area = blanks.reduce((sum, { width, height }) => sum + width * height * 60, 0);
    expect(planned.bound).toBeGreaterThanOrEqual(Math.ceil(area / 3048 ** 2));
    expect(planned.cost - planned.bound).toBeLessThanOrEqual(1);
  });
});

type Instance = {
  readonly name: string;
  readonly bin: { readonly w: number; readonly h: number };
  readonly items: readonly { readonly w: number; readonly h: number }[];
  readonly minBins: { readonly fixedOrientation: number; readonly rotationAllowed: number };
};

describeWith<{ instances: readonly Instance[] }>(
  'guillotine-binpacking-class01-n20.json',
  'published fewest sheets for single pieces',
  ({ instances }) => {
    const cases = instances.flatMap((instance) => [
      [instance.name, 'fixed', false, instance.minBins.fixedOrientation, instance] as const,
      [instance.name, 'turnable', true, instance.minBins.rotationAllowed, instance] as const,
    ]);
    it.each(cases)('%s, %s', (_, __, turnable, fewest, { bin, items }) => {
      const problem = {
        blanks: items.map(({ w, h }) => ({ width: w, height: h, turnable })),
        demand: items.map(() => 1),
        sheets: [{ width: bin.w, height: bin.h, cost: 1 }],
      };
      expect(plan(problem, 10)).toMatchObject({ cost: fewest, bound: fewest });
    });
  },
);
