import { cheapestBasket } from './bounds.ts';
import { easiestPlan } from './easiest.ts';
import { type LinearSolver, Master } from './master.ts';
import { PatternSearch } from './pattern-search.ts';
import { type Batch, type CuttingProblem, hasChoice, type Spending, spendingOf } from './problem.ts';
import type { Work } from './work.ts';

/** A plan on the way: what it costs and what is proven to be needed. Costs are sheets where each costs 1. */
export type Standing = { readonly cost: number; readonly bound: number };

export type SheetPlan = Standing & { readonly batches: readonly Batch[] };

type SearchMeans = {
  readonly highs: LinearSolver;
  /** The search ends when it is done. A first plan is always made. */
  readonly work: Work;
  /** Told of each better plan and each better bound. */
  readonly progress?: (standing: Standing) => void;
};

/** The most steps of a choice among patterns, before more patterns are looked for. */
const CHOICE = 1.5e6;

/** The part of the work that is kept for an easier plan of the same cost, and the most steps for it. */
const EASIER = { part: 0.15, most: 8e5 };

/**
 * The cheapest plan found in the work there is, and a bound no plan can be under: cut by patterns that column
 * generation finds, chosen by a whole-number program. The plan gives exactly what is wanted.
 */
export function planSheets(
  problem: CuttingProblem,
  { highs, work, progress = () => {} }: SearchMeans,
): SheetPlan {
  const kept = Math.min(EASIER.most, EASIER.part * work.left);
  const stepsLeft = (): number => work.left - kept;
  const master = new Master(problem, highs, work);
  const whole = stepsLeft();
  const search = new PatternSearch(problem, master, work, (part) => stepsLeft() <= whole * (1 - part));
  const standing = new PlanSearch(problem, search, master, progress, stepsLeft);
  const { batches, spent, bound } = standing.run();
  const easiest = easiestPlan(problem, master, batches, spent, kept);
  return { batches: easiest, cost: spent.cost, bound };
}

/** A plan that gets better, and a bound that comes nearer to it. */
class PlanSearch {
  readonly #problem: CuttingProblem;
  readonly #search: PatternSearch;
  readonly #master: Master;
  readonly #progress: (standing: Standing) => void;
  readonly #stepsLeft: () => number;
  #batches: readonly Batch[];
  #spent: Spending;
  #bound = 0;

  constructor(
    problem: CuttingProblem,
    search: PatternSearch,
    master: Master,
    progress: (standing: Standing) => void,
    stepsLeft: () => number,
  ) {
    this.#problem = problem;
    this.#search = search;
    this.#master = master;
    this.#progress = progress;
    this.#stepsLeft = stepsLeft;
    this.#batches = search.fillSheets();
    this.#spent = spendingOf(this.#batches, problem);
    master.beThriftier(this.#spent);
  }

  run(): { readonly batches: readonly Batch[]; readonly spent: Spending; readonly bound: number } {
    this.#raise(this.#least());
    const isChosen = hasChoice(this.#problem);
    const proof = this.#isDone() && !isChosen ? undefined : this.#search.generate();
    this.#raise(this.#least());
    if (isChosen || !this.#isDone()) this.#choose(true);
    if (isChosen) this.#tryBaskets();
    for (let round = 0; proof && !this.#isDone(); round += 1) {
      const isAll = round === 1 && this.#search.addAllBelow(this.#spent.cost, proof);
      if (!isAll) this.#search.addNearby(proof);
      if (this.#choose(!isAll) && isAll) this.#raise(this.#spent.cost);
    }
    if (isChosen) this.#choose(true);
    return { batches: this.#batches, spent: this.#spent, bound: this.#bound };
  }

  /** One cheapest basket after another, until one may do: those that cannot raise the bound. */
  #tryBaskets(): void {
    while (!this.#isDone()) {
      const basket = cheapestBasket(this.#search.covers, this.#problem.sheets);
      this.#raise(basket.cost);
      if (this.#isDone()) return;
      const sufficiency = this.#search.tryBasket(basket);
      if (sufficiency !== 'no') this.#choose(true);
      if (sufficiency !== 'no') return;
    }
  }

  #least(): number {
    return cheapestBasket(this.#search.covers, this.#problem.sheets).cost;
  }

  #isDone(): boolean {
    return this.#spent.cost <= this.#bound || this.#stepsLeft() <= 0;
  }

  #raise(bound: number): void {
    if (bound <= this.#bound) return;
    this.#bound = bound;
    this.#tell();
  }

  /** @returns whether no choice among the known patterns is better. */
  #choose(isThrifty: boolean): boolean {
    const chosen = this.#master.choose(Math.min(CHOICE, this.#stepsLeft()), isThrifty);
    const spent = chosen && spendingOf(chosen.batches, this.#problem);
    if (spent && isBetter(spent, this.#spent)) {
      this.#spent = spent;
      this.#batches = chosen.batches;
      this.#tell();
    }
    return chosen?.isBest === true;
  }

  #tell(): void {
    this.#progress({ cost: this.#spent.cost, bound: this.#bound });
  }
}

function isBetter(one: Spending, other: Spending): boolean {
  return one.cost < other.cost || (one.cost === other.cost && one.used < other.used);
}
