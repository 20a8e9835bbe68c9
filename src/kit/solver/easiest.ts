import { arrange } from './arrange.ts';
import { clipped } from './cut-tree.ts';
import { type Effort, effortOf } from './effort.ts';
import type { Master } from './master.ts';
import type { Batch, CuttingProblem, Pattern, Spending } from './problem.ts';

/**
 * Of the plans that cost and use up no more an easy one, each pattern cut the easiest way, with exactly what is wanted of each blank.
 * @param batches such a plan.
 */
export function easiestPlan(
  problem: CuttingProblem,
  master: Master,
  batches: readonly Batch[],
  most: Spending,
  steps: number,
): readonly Batch[] {
  const effortOfPattern = ({ tree }: Pattern): Effort => effortOf(arrange(tree, problem.longest));
  const chosen = master.easiest(most, steps, effortOfPattern)?.batches;
  const plans = [batches, ...(chosen ? [chosen] : [])].flatMap((each) => [
    exactly(each, problem, 'of few'),
    exactly(each, problem, 'alike'),
  ]);
  const ranked = plans.map((plan) => {
    const efforts = plan.map(({ pattern, count }) => {
      const { once, perSheet } = effortOfPattern(pattern);
      return once + perSheet * count;
    });
    return { plan, effort: efforts.reduce((sum, each) => sum + each, 0) };
  });
  const { plan } = ranked.reduce((least, each) => (each.effort < least.effort ? each : least));
  return plan.map(({ pattern, count }) => ({
    pattern: { ...pattern, tree: arrange(pattern.tree, problem.longest) },
    count,
  }));
}

/** Whether what is too much is left out of as few sheets as can be, or first of every sheet of a layout alike. */
type Leaving = 'of few' | 'alike';

/** The same sheets without the blanks that are more than is wanted. */
function exactly(
  batches: readonly Batch[],
  { demand, blanks }: CuttingProblem,
  leaving: Leaving,
): readonly Batch[] {
  const surplus = demand.map((wanted, blank) =>
    batches.reduce((sum, { pattern, count }) => sum + count * (pattern.counts[blank] ?? 0), -wanted),
  );
  /** By area. */
  const surplusIn = ({ pattern: { counts }, count }: Batch): number =>
    blanks.reduce((area, { width, height }, blank) => {
      const held = Math.min(counts[blank] ?? 0, surplus[blank] ?? 0);
      return count > 0 ? area + width * height * held : 0;
    }, 0);
  /** Without what there is too much of for every one of its sheets. */
  const lightened = ({ pattern, count }: Batch): Batch => {
    const counts = pattern.counts.map((each, blank) => {
      const gone = Math.min(each, Math.floor((surplus[blank] ?? 0) / count));
      surplus[blank] = (surplus[blank] ?? 0) - gone * count;
      return each - gone;
    });
    return { pattern: { ...pattern, tree: clipped(pattern.tree, counts), counts }, count };
  };
  let left = leaving === 'alike' ? batches.map(lightened) : batches;
  while (surplus.some((count) => count > 0)) {
    const most = left.reduce((one, other) => (surplusIn(other) > surplusIn(one) ? other : one));
    const others = left.filter((batch) => batch !== most);
    left = [...others, { ...most, count: most.count - 1 }, lightened({ ...most, count: 1 })];
  }
  return gathered(left);
}

/** Sheets that give the same blanks as one batch; none that give nothing. */
function gathered(batches: readonly Batch[]): readonly Batch[] {
  const together = new Map<string, Batch>();
  for (const { pattern, count } of batches) {
    const key = `${pattern.sheet}: ${pattern.counts.join()}`;
    const before = together.get(key) ?? { pattern, count: 0 };
    if (count > 0 && pattern.counts.some((each) => each > 0))
      together.set(key, { ...before, count: before.count + count });
  }
  return [...together.values()];
}
