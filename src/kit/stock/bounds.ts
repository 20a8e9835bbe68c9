import { gcd } from '../../measure/numbers.ts';
import { type Rect, stancesOf } from '../guillotine/blank.ts';
import type { Priced } from './pricing.ts';
import type { CuttingProblem } from './problem.ts';

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
    isUseful(sheet, problem)
      ? [roundedUp(needed * BigInt(sheet.cost), areaOf(safe?.sheets[index] ?? sheet), problem)]
      : [],
  );
  return Math.min(...bounds);
}

function areaOf({ width, height }: Rect): bigint {
  return BigInt(width) * BigInt(height);
}

function isUseful(sheet: Rect, { blanks }: CuttingProblem): boolean {
  return blanks.some((blank) =>
    stancesOf(blank).some(({ width, height }) => width <= sheet.width && height <= sheet.height),
  );
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
    return roundedUp(worth * BigInt(problem.sheets[sheet]?.cost ?? 0), BigInt(bound), problem);
  });
  return Math.min(...bounds);
}

/** A cost is a sum of the costs of sheets, so a bound may be rounded up to the next multiple of what divides all. */
function roundedUp(numerator: bigint, denominator: bigint, problem: CuttingProblem): number {
  const unit = costUnit(problem);
  const whole = denominator * unit;
  return Number(((numerator + whole - 1n) / whole) * unit);
}

/** What every cost of a plan is a multiple of. */
export function costUnit({ sheets }: CuttingProblem): bigint {
  return sheets.reduce((divisor, { cost }) => gcd(divisor, BigInt(cost)), 0n);
}
