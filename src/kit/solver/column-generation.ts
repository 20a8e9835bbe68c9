import { valueBound } from './bounds.ts';
import type { Master } from './master.ts';
import type { Priced, Pricer } from './pricing.ts';
import type { CuttingProblem, Pattern } from './problem.ts';

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

/** The bound that was proven: no plan costs less. And the values of the blanks, and the best patterns, that prove it. */
type Proven = {
  readonly bound: number;
  readonly values: readonly number[];
  readonly priced: readonly Priced[];
};

/**
 * Adds patterns to the master as long as one is worth more than its sheet costs (P. C. Gilmore and R. E. Gomory,
 * Operations Research 9, 1961). Stops early when time is up. Undefined when the solver gives up.
 */
export function generatePatterns(
  problem: CuttingProblem,
  master: Master,
  pricer: Pricer,
  isLate: () => boolean,
): Proven | undefined {
  const parts = PARTS / Math.max(...problem.sheets.map(({ cost }) => cost));
  let bound = 0;
  let pairs = QUICK;
  for (;;) {
    const prices = master.relax();
    if (!prices) return undefined;
    const values = prices.map((price) => Math.max(1, Math.floor(price * parts)));
    const priced = pricer.best(values, pairs);
    bound = Math.max(bound, valueBound(values, priced, problem));
    const better = priced.filter(({ pattern }) => isBetter(problem, pattern, prices));
    const added = better.filter(({ pattern }) => master.add(pattern));
    if (isLate()) return { bound, values, priced };
    if (added.length > 0) continue;
    if (pairs === THOROUGH || priced.every(({ value, bound: most }) => value === most))
      return { bound, values, priced };
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

/** How far values stray when other patterns are looked for, and how often. */
const STRAY = 0.6;
const STRAYS = 20;

/** Adds patterns that are best for values near those of the proof: whole sheets often need others than parts do. */
export function addNearby(
  { values }: Proven,
  master: Master,
  pricer: Pricer,
  random: () => number,
  isLate: () => boolean,
): void {
  for (let time = 0; time < STRAYS && !isLate(); time += 1) {
    const strayed = values.map((value) => Math.ceil(value * (1 + STRAY * (random() - 0.5))));
    for (const { pattern } of pricer.best(strayed, QUICK)) master.add(pattern);
  }
}

/**
 * Adds every pattern that a plan cheaper than `cost` can use. Such a plan has no sheet to give away: each must come near
 * to what it costs, and often few patterns do (R. Baldacci et al., Mathematical Programming 115, 2008, list routes in
 * the same way).
 * @returns whether they are all there now, so that the best choice among them is the best plan or shows there is none.
 */
export function addAllBelow(
  cost: number,
  { values, priced }: Proven,
  { sheets, demand }: CuttingProblem,
  master: Master,
  pricer: Pricer,
): boolean {
  const worth = values.reduce((sum, value, blank) => sum + value * (demand[blank] ?? 0), 0);
  const most = Math.max(...priced.map(({ bound }, sheet) => bound / (sheets[sheet]?.cost ?? 1)));
  return sheets.every((sheet, index) => {
    const least = Math.max(1, Math.floor(worth - (cost - 1 - sheet.cost) * most));
    const patterns = pricer.all(index, values, least);
    for (const pattern of patterns ?? []) master.add(pattern);
    return patterns !== undefined;
  });
}
