import { cheapestBasket } from './bounds.ts';
import { easiestPlan } from './easiest.ts';
import { type LinearSolver, Master } from './master.ts';
import { PatternSearch } from './pattern-search.ts';
import { type Batch, type CuttingProblem, hasChoice, type Spending, spendingOf } from './problem.ts';

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
  const whole = secondsLeft();
  const search = new PatternSearch(problem, master, (part) => secondsLeft() <= whole * (1 - part));
  const standing = new PlanSearch(problem, search, master, progress, secondsLeft);
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
  readonly #secondsLeft: () => number;
  #batches: readonly Batch[];
  #spent: Spending;
  #bound = 0;

  constructor(
    problem: CuttingProblem,
    search: PatternSearch,
    master: Master,
    progress: (standing: Standing) => void,
    secondsLeft: () => number,
  ) {
    this.#problem = problem;
    this.#search = search;
    this.#master = master;
    this.#progress = progress;
    this.#secondsLeft = secondsLeft;
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
    return this.#spent.cost <= this.#bound || this.#secondsLeft() <= 0;
  }

  #raise(bound: number): void {
    if (bound <= this.#bound) return;
    this.#bound = bound;
    this.#tell();
  }

  /** @returns whether no choice among the known patterns is better. */
  #choose(isThrifty: boolean): boolean {
    const chosen = this.#master.choose(Math.min(CHOICE, this.#secondsLeft()), isThrifty);
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
