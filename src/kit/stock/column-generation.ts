import { valueBound } from './bounds.ts';
import type { Valued } from './close-gap.ts';
import type { Master, Relaxed } from './master.ts';
import type { Pricer } from './pricing.ts';
import type { CuttingProblem, Pattern } from './problem.ts';

/** What the patterns found so far give when parts of sheets are allowed, and the bound that was proven on the way. */
export type Generated = Valued & { readonly relaxed: Relaxed; readonly bound: number };

/**
 * Prices become whole numbers of these parts of the dearest sheet's cost, so that everything after them is exact. What
 * costs nothing is worth one part, so that it is cut too where there is room.
 */
const PARTS = 2 ** 22;

/** What a new pattern must be better by, relative to its sheet's cost. */
const BETTER = 1 + 1e-7;

/** Pairs of blocks looked at for a pattern that is wanted soon, and for one whose worth is to be proven. */
const QUICK = 4_000;
const THOROUGH = 150_000;

export type Generation = {
  readonly problem: CuttingProblem;
  readonly master: Master;
  readonly pricer: Pricer;
  readonly isLate: () => boolean;
};

/**
 * Adds patterns to the master as long as one is worth more than its sheet costs (P. C. Gilmore and R. E. Gomory,
 * Operations Research 9, 1961). Stops early when time is up.
 * @param demand what is to be cut; only for the problem's own is a bound proven.
 */
export function generatePatterns(
  { problem, master, pricer, isLate }: Generation,
  demand: readonly number[],
): Generated | undefined {
  const parts = PARTS / Math.max(...problem.sheets.map(({ cost }) => cost));
  const isWhole = demand === problem.demand;
  let bound = 0;
  let pairs = QUICK;
  for (;;) {
    const relaxed = master.relax(demand);
    if (!relaxed) return undefined;
    const values = relaxed.prices.map((price) => Math.max(1, Math.floor(price * parts)));
    const priced = pricer.best(values, demand, pairs);
    if (isWhole) bound = Math.max(bound, valueBound(values, priced, problem));
    const better = priced.filter(({ pattern }) => isBetter(problem, pattern, relaxed.prices));
    const added = better.filter(({ pattern }) => master.add(pattern));
    if (isLate()) return { relaxed, bound, values, priced };
    if (added.length > 0) continue;
    const isSure = !isWhole || pairs === THOROUGH || priced.every(({ value, bound: most }) => value === most);
    if (isSure) return { relaxed, bound, values, priced };
    pairs = THOROUGH;
  }
}

function isBetter(
  { sheets }: CuttingProblem,
  { counts, sheet }: Pattern,
  prices: readonly number[],
): boolean {
  const worth = counts.reduce((total, count, blank) => total + count * (prices[blank] ?? 0), 0);
  return worth > (sheets[sheet]?.cost ?? 1) * BETTER;
}
