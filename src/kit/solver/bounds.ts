import { type Rect, stancesOn } from './cut-tree.ts';
import type { CuttingProblem, Priced } from './problem.ts';

/**
 * The least cost by area alone: every sheet, of whatever size, covers at most its own area. A sheet size that no blank
 * fits counts for nothing.
 */
export function areaBound(problem: CuttingProblem): number {
  const { demand, sheets, safe } = problem;
  const blanks = safe?.blanks ?? problem.blanks;
  const needed = blanks.reduce(
    (total, blank, index) => total + areaOf(blank) * BigInt(demand[index] ?? 0),
    0n,
  );
  const bounds = sheets.flatMap((sheet, index) =>
    problem.blanks.some((blank) => stancesOn(blank, sheet).length > 0)
      ? [roundedUp(needed * BigInt(sheet.cost), areaOf(safe?.sheets[index] ?? sheet))]
      : [],
  );
  return Math.min(...bounds);
}

function areaOf({ width, height }: Rect): bigint {
  return BigInt(width) * BigInt(height);
}

/**
 * The least cost that whole-number values of the blanks prove: were every blank worth so much, no sheet size could
 * give more worth for its cost than `priced` says, so all that is wanted costs at least this (A. A. Farley,
 * Operations Research 38, 1990). Exact: whole numbers only.
 */
export function valueBound(
  values: readonly number[],
  priced: readonly Priced[],
  problem: CuttingProblem,
): number {
  const worth = values.reduce(
    (total, value, blank) => total + BigInt(value) * BigInt(problem.demand[blank] ?? 0),
    0n,
  );
  const bounds = priced.map(({ bound }, sheet) => {
    if (!Number.isFinite(bound)) return 0;
    if (bound === 0) return Number.POSITIVE_INFINITY;
    return roundedUp(worth * BigInt(problem.sheets[sheet]?.cost ?? 0), BigInt(bound));
  });
  return Math.min(...bounds);
}

/** A cost is a whole number, so a bound is rounded up. */
function roundedUp(numerator: bigint, denominator: bigint): number {
  return Number((numerator + denominator - 1n) / denominator);
}
