import { areaBound } from './bounds.ts';
import { easiestPlan } from './easiest.ts';
import { type LinearSolver, Master } from './master.ts';
import { PatternSearch } from './pattern-search.ts';
import { type Batch, type CuttingProblem, costOf } from './problem.ts';

/** A plan on the way: what it costs and what is proven to be needed. Costs are sheets where each costs 1. */
export type Standing = { readonly cost: number; readonly bound: number };

export type SheetPlan = Standing & { readonly batches: readonly Batch[] };

/** What a search may use of the world. */
export type SearchTools = {
  readonly highs: LinearSolver;
  /** Seconds since some moment, rising. */
  readonly clock: () => number;
};

type SearchMeans = SearchTools & {
  /** When to stop, on that clock. A first plan is always made. */
  readonly until: number;
  /** Told of each better plan and each better bound. */
  readonly progress?: (standing: Standing) => void;
};

/** The longest a choice among patterns may take, in seconds, before more patterns are looked for. */
const CHOICE = 1.5;

/** The part of the time that is kept for an easier plan of the same cost, and the most seconds for it. */
const EASIER = { part: 0.15, most: 0.8 };

/**
 * The cheapest plan found in the time there is, and a bound no plan can be under: cut by patterns that column
 * generation finds, chosen by a whole-number program. The plan gives exactly what is wanted.
 */
export function planSheets(
  problem: CuttingProblem,
  { highs, clock, until, progress = () => {} }: SearchMeans,
): SheetPlan {
  const kept = Math.min(EASIER.most, EASIER.part * (until - clock()));
  const secondsLeft = (): number => until - kept - clock();
  const master = new Master(problem, highs);
  const search = new PatternSearch(problem, master, () => secondsLeft() <= 0);
  const first = search.fillSheets();
  let plan: SheetPlan = { batches: first, cost: costOf(first, problem), bound: areaBound(problem) };
  const improve = (better: Partial<SheetPlan>): void => {
    plan = { ...plan, ...better };
    progress(plan);
  };
  const isDone = (): boolean => plan.cost <= plan.bound || secondsLeft() <= 0;
  /** @returns whether no choice among the known patterns is better. */
  const choose = (): boolean => {
    const chosen = master.choose(Math.min(CHOICE, secondsLeft()));
    const cost = chosen ? costOf(chosen.batches, problem) : Number.POSITIVE_INFINITY;
    if (chosen && cost < plan.cost) improve({ batches: chosen.batches, cost });
    return chosen?.isBest === true;
  };
  improve({});
  const proven = isDone() ? undefined : search.generate();
  if (proven && proven.bound > plan.bound) improve({ bound: proven.bound });
  if (!isDone()) choose();
  for (let round = 0; proven && !isDone(); round += 1) {
    const isAll = round === 1 && search.addAllBelow(plan.cost, proven);
    if (!isAll) search.addNearby(proven);
    if (choose() && isAll) improve({ bound: plan.cost });
  }
  const easiest = easiestPlan(problem, master, plan.batches, plan.cost, kept);
  return { batches: easiest, cost: costOf(easiest, problem), bound: plan.bound };
}
