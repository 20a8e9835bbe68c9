import type { Highs } from '../../shape/highs.ts';
import { areaBound } from './bounds.ts';
import { closeGap } from './close-gap.ts';
import { type Generated, type Generation, generatePatterns } from './column-generation.ts';
import { dive } from './dive.ts';
import { effortOf, totalEffort } from './effort.ts';
import { exactly } from './exactly.ts';
import { fillSheets } from './greedy.ts';
import { Master } from './master.ts';
import { Pricer } from './pricing.ts';
import { type CuttingProblem, costOf, type Use } from './problem.ts';

/** A plan on the way: what it costs and what is proven to be needed. Costs are sheets where each costs 1. */
export type Stand = { readonly cost: number; readonly bound: number };

export type SheetPlan = Stand & {
  readonly uses: readonly Use[];
};

export type Search = {
  readonly highs: Highs;
  /** Seconds since some moment, rising. */
  readonly clock: () => number;
  /** When to stop, on that clock. A first plan is always made. */
  readonly until: number;
  /** Told of each better plan and each better bound. */
  readonly progress?: (stand: Stand) => void;
};

/**
 * The cheapest plan found in the time there is, and a bound no plan can be under: cut by patterns that column
 * generation finds, chosen by a whole-number programme. The plan gives exactly what is wanted.
 */
export function planSheets(problem: CuttingProblem, search: Search): SheetPlan {
  return new Planner(problem, search).plan();
}

/** The longest the choice among patterns may take, in seconds, before more patterns are looked for. */
const CHOICE = 1.5;

/** The part of the time that is kept for an easier plan of the same cost, and the most seconds for it. */
const EASIER = { part: 0.15, most: 0.8 };

class Planner {
  readonly #problem: CuttingProblem;
  readonly #search: Search;
  readonly #master: Master;
  readonly #pricer: Pricer;
  #uses: readonly Use[] = [];
  #cost = Number.POSITIVE_INFINITY;
  #bound: number;
  #generated: Generated | undefined;
  /** Seconds. */
  readonly #kept: number;

  constructor(problem: CuttingProblem, search: Search) {
    this.#problem = problem;
    this.#search = search;
    this.#master = new Master(problem, search.highs);
    this.#pricer = new Pricer(problem);
    this.#bound = areaBound(problem);
    this.#kept = Math.min(EASIER.most, EASIER.part * (search.until - search.clock()));
  }

  plan(): SheetPlan {
    this.#offer(fillSheets(this.#problem, this.#pricer));
    if (!this.#isDone) this.#prove();
    for (let attempt = 0; !this.#isDone; attempt += 1) {
      this.#dive(attempt);
      if (!this.#isDone) this.#choose();
      if (!this.#isDone && attempt === 0) this.#closeGap();
    }
    const uses = this.#easiest();
    return { uses, cost: costOf(uses, this.#problem), bound: this.#bound };
  }

  /** Of the plans at this cost an easy one, with exactly what is wanted of each blank. */
  #easiest(): readonly Use[] {
    const choice = this.#master.easiest(this.#cost, this.#kept, (pattern) =>
      effortOf(pattern, this.#problem),
    );
    const chosen = choice.status === 'impossible' ? undefined : choice.uses;
    const plans = [this.#uses, ...(chosen ? [chosen] : [])].flatMap((uses) => [
      exactly(uses, this.#problem, 'of few'),
      exactly(uses, this.#problem, 'alike'),
    ]);
    const ranked = plans.map((uses) => ({ uses, effort: totalEffort(uses, this.#problem) }));
    return ranked.reduce((least, each) => (each.effort < least.effort ? each : least)).uses;
  }

  get #generation(): Generation {
    return {
      problem: this.#problem,
      master: this.#master,
      pricer: this.#pricer,
      isLate: () => this.#isLate,
    };
  }

  get #left(): number {
    return this.#search.until - this.#kept - this.#search.clock();
  }

  get #isLate(): boolean {
    return this.#left <= 0;
  }

  get #isDone(): boolean {
    return this.#cost <= this.#bound || this.#isLate;
  }

  #offer(uses: readonly Use[] | undefined): void {
    if (!uses) return;
    for (const { pattern } of uses) this.#master.add(pattern);
    const cost = costOf(uses, this.#problem);
    if (cost >= this.#cost) return;
    this.#cost = cost;
    this.#uses = uses;
    this.#search.progress?.({ cost, bound: this.#bound });
  }

  #raise(bound: number): void {
    if (bound <= this.#bound) return;
    this.#bound = bound;
    this.#search.progress?.({ cost: this.#cost, bound });
  }

  #prove(): void {
    this.#generated = generatePatterns(this.#generation, this.#problem.demand);
    this.#raise(this.#generated?.bound ?? 0);
  }

  #choose(): void {
    const choice = this.#master.choose(Math.min(CHOICE, this.#left));
    if (choice.status !== 'impossible') this.#offer(choice.uses);
  }

  #closeGap(): void {
    if (!this.#generated) return;
    const { highs } = this.#search;
    const closed = closeGap(this.#problem, this.#pricer, this.#generated, this.#cost, {
      highs,
      seconds: this.#left,
    });
    if (closed === 'none') this.#raise(this.#cost);
    else if (closed !== 'unknown') this.#offer(closed);
  }

  /** The first dive takes the largest part each time; later ones sometimes the second or third. */
  #dive(attempt: number): void {
    const random = randomFrom(attempt);
    const choose = (candidates: number): number =>
      attempt === 0 ? 0 : Math.min(candidates - 1, Math.floor(random() * 3));
    this.#offer(dive(this.#generation, choose));
  }
}

/** Numbers from 0 to 1 that are the same in every run (a linear congruential generator, constants of Numerical Recipes). */
function randomFrom(seed: number): () => number {
  let state = (seed * 2654435761) % 4294967296;
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return state / 4294967296;
  };
}
