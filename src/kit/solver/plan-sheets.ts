import { areaBound } from './bounds.ts';
import { addAllBelow, addNearby, generatePatterns } from './column-generation.ts';
import { easiestPlan } from './easiest.ts';
import { fillSheets } from './greedy.ts';
import { type LinearSolver, Master } from './master.ts';
import { Pricer } from './pricing.ts';
import { type Batch, type CuttingProblem, costOf } from './problem.ts';

/** A plan on the way: what it costs and what is proven to be needed. Costs are sheets where each costs 1. */
export type Standing = { readonly cost: number; readonly bound: number };

export type SheetPlan = Standing & { readonly batches: readonly Batch[] };

type PlanSearch = {
  readonly highs: LinearSolver;
  /** Seconds since some moment, rising. */
  readonly clock: () => number;
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
 * generation finds, chosen by a whole-number programme. The plan gives exactly what is wanted.
 */
export function planSheets(
  problem: CuttingProblem,
  { highs, clock, until, progress }: PlanSearch,
): SheetPlan {
  const kept = Math.min(EASIER.most, EASIER.part * (until - clock()));
  const secondsLeft = (): number => until - kept - clock();
  const master = new Master(problem, highs);
  const pricer = new Pricer(problem);
  let batches = fillSheets(problem, pricer);
  let standing: Standing = { cost: costOf(batches, problem), bound: areaBound(problem) };
  const isLate = (): boolean => secondsLeft() <= 0;
  const isDone = (): boolean => standing.cost <= standing.bound || isLate();
  const stand = (better: Partial<Standing>): void => {
    standing = { ...standing, ...better };
    progress?.(standing);
  };
  for (const { pattern } of batches) master.add(pattern);
  stand({});
  /** @returns whether no choice among the known patterns is better. */
  const choose = (): boolean => {
    const chosen = master.choose(Math.min(CHOICE, secondsLeft()));
    const cost = chosen ? costOf(chosen.batches, problem) : Number.POSITIVE_INFINITY;
    if (chosen && cost < standing.cost) {
      batches = chosen.batches;
      stand({ cost });
    }
    return chosen?.isBest === true;
  };
  const proven = isDone() ? undefined : generatePatterns(problem, master, pricer, isLate);
  if (proven && proven.bound > standing.bound) stand({ bound: proven.bound });
  if (!isDone()) choose();
  const random = randomNumbers();
  for (let round = 0; proven && !isDone(); round += 1) {
    const isAll = round === 1 && addAllBelow(standing.cost, proven, problem, master, pricer);
    if (!isAll) addNearby(proven, master, pricer, random, isLate);
    if (choose() && isAll) stand({ bound: standing.cost });
  }
  const easiest = easiestPlan(problem, master, batches, standing.cost, kept);
  return { batches: easiest, cost: costOf(easiest, problem), bound: standing.bound };
}

/** Numbers from 0 to 1, the same in every run (a linear congruential generator, constants of Numerical Recipes). */
function randomNumbers(): () => number {
  let state = 1;
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return state / 4294967296;
  };
}
