import { performance } from 'node:perf_hooks';
import { describe, expect, it } from 'vitest';
import { countBlanks } from '../../src/kit/guillotine/blank.ts';
import { planSheets, type SheetPlan } from '../../src/kit/stock/plan-sheets.ts';
import { type CuttingProblem, sheetsIn } from '../../src/kit/stock/problem.ts';
import { loadHighs } from '../../src/shape/highs.ts';
import { describeWith } from './published.ts';
import { replay } from './replay.ts';

const highs = await loadHighs();

/** Plans, and checks the plan by replaying each of its sheets: exactly what is wanted is cut. */
function plan(problem: CuttingProblem, seconds: number): SheetPlan {
  const clock = (): number => performance.now() / 1000;
  const planned = planSheets(problem, { highs, clock, until: clock() + seconds });
  const cut = problem.blanks.map(() => 0);
  for (const { pattern, count } of planned.uses) {
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
      expect(sheetsIn(planned.uses)).toBe(fewest);
    }
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
