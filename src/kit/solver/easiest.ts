import { type Effort, effortOfSheets } from './effort.ts';
import { exactly } from './exactly.ts';
import type { Master } from './master.ts';
import type { Batch, CuttingProblem, Pattern } from './problem.ts';
import { arrange } from './strips.ts';

/**
 * Of the plans at this cost an easy one, each pattern cut the easiest way, with exactly what is wanted of each blank.
 * @param batches a plan at this cost.
 */
export function easiestPlan(
  problem: CuttingProblem,
  master: Master,
  batches: readonly Batch[],
  cost: number,
  seconds: number,
): readonly Batch[] {
  const chosen = master.easiest(cost, seconds, (pattern) => effortOfPattern(pattern, problem));
  const plans = [batches, ...(chosen ? [chosen.batches] : [])].flatMap((each) => [
    exactly(each, problem, 'of few'),
    exactly(each, problem, 'alike'),
  ]);
  const ranked = plans.map((each) => ({ batches: each, effort: totalEffort(each, problem) }));
  const easiest = ranked.reduce((least, each) => (each.effort < least.effort ? each : least)).batches;
  return easiest.map(({ pattern, count }) => {
    return { pattern: { ...pattern, tree: arrange(pattern.tree, problem.longest) }, count };
  });
}

function effortOfPattern({ tree }: Pattern, { longest }: CuttingProblem): Effort {
  return effortOfSheets(arrange(tree, longest));
}

function totalEffort(batches: readonly Batch[], problem: CuttingProblem): number {
  return batches.reduce((total, { pattern, count }) => {
    const { once, perSheet } = effortOfPattern(pattern, problem);
    return total + once + perSheet * count;
  }, 0);
}
