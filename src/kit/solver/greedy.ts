import type { Pricer } from './pricing.ts';
import { type Batch, type CuttingProblem, type Pattern, stillWanted } from './problem.ts';

/**
 * A good plan at once: sheet after sheet is cut for the most area of pieces, and each way to cut a sheet is repeated
 * while it gives nothing that is too much.
 */
export function fillSheets(problem: CuttingProblem, pricer: Pricer): readonly Batch[] {
  const areas = problem.blanks.map(({ width, height }) => width * height);
  const batches: Batch[] = [];
  let demand = problem.demand;
  while (demand.some((wanted) => wanted > 0)) {
    const pattern = bestForItsCost(problem, pricer.good(areas, demand), areas);
    batches.push({ pattern, count: repeats(pattern, demand) });
    demand = stillWanted(problem.demand, batches);
  }
  return batches;
}

/** The sheet that gives most for its cost; of those that take all that is left, so the cheapest. */
function bestForItsCost(
  { sheets }: CuttingProblem,
  patterns: readonly Pattern[],
  areas: readonly number[],
): Pattern {
  const ranked = patterns.map((pattern) => {
    const area = pattern.counts.reduce((sum, count, blank) => sum + count * (areas[blank] ?? 0), 0);
    return { pattern, worth: area / (sheets[pattern.sheet]?.cost ?? 1) };
  });
  const [best] = ranked.toSorted((a, b) => b.worth - a.worth);
  if (!best || best.worth <= 0) throw new Error('a blank fits no sheet: it should have been refused before');
  return best.pattern;
}

/** How often a pattern can be cut in a row without giving more of a blank than is wanted; at least once. */
function repeats({ counts }: Pattern, demand: readonly number[]): number {
  const times = counts.flatMap((count, blank) =>
    count > 0 ? [Math.floor((demand[blank] ?? 0) / count)] : [],
  );
  return Math.max(1, Math.min(...times));
}
