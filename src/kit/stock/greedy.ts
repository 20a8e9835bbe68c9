import type { Pricer } from './pricing.ts';
import { type CuttingProblem, type Pattern, repeats, stillWanted, type Use } from './problem.ts';

/** Pairs of blocks looked at for one sheet of a first plan: a few milliseconds. */
const QUICK_PAIRS = 4_000;

/**
 * A good plan at once: sheet after sheet is cut for the most worth, by area unless `values` says otherwise, and each
 * way to cut a sheet is repeated while it gives nothing that is too much.
 */
export function fillSheets(
  problem: CuttingProblem,
  pricer: Pricer,
  values: readonly number[] = problem.blanks.map(({ width, height }) => width * height),
): readonly Use[] {
  const uses: Use[] = [];
  let demand = problem.demand;
  while (demand.some((wanted) => wanted > 0)) {
    const pattern = bestForItsCost(problem, pricer, values, demand);
    uses.push({ pattern, count: repeats(pattern, demand) });
    demand = stillWanted(problem.demand, uses);
  }
  return uses;
}

/** The sheet that gives the most worth for its cost; of those that take all that is left, the cheapest. */
function bestForItsCost(
  { sheets }: CuttingProblem,
  pricer: Pricer,
  values: readonly number[],
  demand: readonly number[],
): Pattern {
  const priced = pricer.best(values, demand, QUICK_PAIRS).map(({ pattern, value }) => ({
    pattern,
    worth: value / (sheets[pattern.sheet]?.cost ?? 1),
  }));
  const [best] = priced.toSorted((a, b) => b.worth - a.worth);
  if (!best || best.worth <= 0) throw new Error('a blank fits no sheet: it should have been refused before');
  return best.pattern;
}
