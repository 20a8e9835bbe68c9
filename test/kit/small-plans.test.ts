import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Blank, Rect } from '../../src/kit/solver/cut-tree.ts';
import { planSheets } from '../../src/kit/solver/plan-sheets.ts';
import type { CuttingProblem } from '../../src/kit/solver/problem.ts';
import { loadHighs } from '../../src/shape/highs.ts';
import { cpuClock } from './cpu-clock.ts';

const highs = await loadHighs();

describe('small plans', () => {
  const side = fc.integer({ min: 1, max: 6 });
  const blank: fc.Arbitrary<Blank> = fc.record({ width: side, height: side, turnable: fc.boolean() });
  const wanted = fc.array(fc.tuple(blank, fc.integer({ min: 1, max: 3 })), { minLength: 1, maxLength: 3 });

  it('are never better than the best there is, and as good as it where they say so', () => {
    fc.assert(
      fc.property(wanted, fc.boolean(), (asked, hasSmall) => {
        const sheets: CuttingProblem['sheets'] = [
          { width: 6, height: 7, cost: hasSmall ? 5 : 1 },
          ...(hasSmall ? [{ width: 6, height: 6, cost: 4 }] : []),
        ];
        const problem: CuttingProblem = {
          blanks: asked.map(([each]) => each),
          demand: asked.map(([, count]) => count),
          sheets,
        };
        const plan = planSheets(problem, { highs, clock: cpuClock, until: cpuClock() + 2 });
        const least = leastCost(problem);
        expect(plan.cost).toBeGreaterThanOrEqual(least);
        expect(plan.bound).toBeLessThanOrEqual(least);
        if (plan.cost === plan.bound) expect(plan.cost).toBe(least);
      }),
      { seed: 5, numRuns: 120 },
    );
  });

  it('are all proven where blanks are few', () => {
    const outcomes = fc.sample(wanted, { seed: 7, numRuns: 60 }).map((asked) => {
      const problem: CuttingProblem = {
        blanks: asked.map(([each]) => each),
        demand: asked.map(([, count]) => count),
        sheets: [{ width: 6, height: 7, cost: 1 }],
      };
      const { cost, bound } = planSheets(problem, { highs, clock: cpuClock, until: cpuClock() + 2 });
      return cost === bound && cost === leastCost(problem);
    });
    expect(outcomes.filter((isBest) => !isBest)).toEqual([]);
  });
});

/**
 * The least cost by trying everything: which choices of blanks can be cut from a sheet by any cuts at all, and then
 * every way to make up the demand of such choices. Knows nothing of positions, values or patterns.
 */
function leastCost({ blanks, demand, sheets }: CuttingProblem): number {
  const all = choices(demand);
  const cheapest = new Map<string, number>();
  for (const counts of all) {
    const costs = sheets.filter((sheet) => canCut(blanks, sheet, counts)).map(({ cost }) => cost);
    if (costs.length > 0) cheapest.set(counts.join(), Math.min(...costs));
  }
  const least = new Map<string, number>();
  for (const counts of all.toSorted((a, b) => total(a) - total(b))) {
    const ways =
      total(counts) === 0
        ? [0]
        : choices(counts).flatMap((part) => {
            const cost = total(part) === 0 ? undefined : cheapest.get(part.join());
            const rest = least.get(counts.map((count, index) => count - (part[index] ?? 0)).join());
            return cost === undefined || rest === undefined ? [] : [cost + rest];
          });
    least.set(counts.join(), Math.min(...ways));
  }
  return least.get(demand.join()) ?? Number.POSITIVE_INFINITY;
}

const known = new Map<string, boolean>();

function canCut(blanks: readonly Blank[], { width, height }: Rect, counts: readonly number[]): boolean {
  const many = total(counts);
  if (many === 0) return true;
  if (many === 1) {
    const only = blanks[counts.indexOf(1)];
    if (!only) return false;
    const fits = only.width <= width && only.height <= height;
    return fits || (only.turnable && only.height <= width && only.width <= height);
  }
  const key = `${JSON.stringify(blanks)} ${width} ${height} ${counts.join()}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const area = counts.reduce((sum, count, index) => sum + count * areaOf(blanks[index]), 0);
  const possible =
    area <= width * height &&
    divisions(counts).some(([near, far]) => {
      for (let cut = 1; cut < width; cut += 1)
        if (
          canCut(blanks, { width: cut, height }, near) &&
          canCut(blanks, { width: width - cut, height }, far)
        )
          return true;
      for (let cut = 1; cut < height; cut += 1)
        if (
          canCut(blanks, { width, height: cut }, near) &&
          canCut(blanks, { width, height: height - cut }, far)
        )
          return true;
      return false;
    });
  known.set(key, possible);
  return possible;
}

function areaOf(blank: Rect | undefined): number {
  return blank ? blank.width * blank.height : 0;
}

function total(counts: readonly number[]): number {
  return counts.reduce((sum, count) => sum + count, 0);
}

function choices(most: readonly number[]): number[][] {
  return most.reduce<number[][]>(
    (before, count) =>
      before.flatMap((each) => Array.from({ length: count + 1 }, (_, taken) => [...each, taken])),
    [[]],
  );
}

function divisions(counts: readonly number[]): (readonly [number[], number[]])[] {
  return choices(counts)
    .map((near) => [near, counts.map((count, index) => count - (near[index] ?? 0))] as const)
    .filter(([near, far]) => total(near) > 0 && total(far) > 0);
}
