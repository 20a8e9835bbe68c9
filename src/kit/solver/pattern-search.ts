import { valueBound } from './bounds.ts';
import { bestConstrained, goodConstrained, listConstrained } from './constrained.ts';
import { type CutGrid, gridOf } from './grid.ts';
import type { Master } from './master.ts';
import { PatternTable } from './pattern-table.ts';
import {
  type Batch,
  type CuttingProblem,
  type Pattern,
  type Priced,
  stillWanted,
  worthOf,
} from './problem.ts';

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

/** How far values stray when other patterns are looked for, and how often. */
const STRAY = 0.6;
const STRAYS = 20;

/** The bound that was proven: no plan costs less. And the values of the blanks, and the best patterns, that prove it. */
type Proven = {
  readonly bound: number;
  readonly values: readonly number[];
  readonly priced: readonly Priced[];
};

/** Finds patterns for a master to choose from. The positions where a sheet may be cut are found once. */
export class PatternSearch {
  readonly #problem: CuttingProblem;
  readonly #master: Master;
  readonly #isLate: () => boolean;
  readonly #grids: readonly CutGrid[];
  readonly #relaxed: readonly (CutGrid | undefined)[];
  #random = 1;

  constructor(problem: CuttingProblem, master: Master, isLate: () => boolean) {
    const { blanks, demand, longest, sheets, safe } = problem;
    this.#problem = problem;
    this.#master = master;
    this.#isLate = isLate;
    this.#grids = sheets.map((sheet) => {
      const grid = gridOf(blanks, sheet, { demand, longest });
      return { ...grid, exact: grid.exact && !safe };
    });
    this.#relaxed = this.#grids.map(({ exact }, sheet) => (exact ? undefined : relaxedGrid(problem, sheet)));
  }

  /**
   * A good plan at once: sheet after sheet is cut for the most area of pieces, and each way to cut a sheet is repeated
   * while it gives nothing that is too much. Its patterns are added.
   */
  fillSheets(): readonly Batch[] {
    const { blanks, sheets, demand } = this.#problem;
    const worth = ({ value, sheet }: Omit<Priced, 'bound'>): number => value / (sheets[sheet]?.cost ?? 1);
    const batches: Batch[] = [];
    for (let left = demand; left.some((wanted) => wanted > 0); left = stillWanted(demand, batches)) {
      const values = blanks.map(({ width, height }, blank) => (left[blank] ? width * height : 0));
      const wanted = { values, demand: left };
      const patterns = this.#grids.map((grid, sheet) => ({ sheet, ...goodConstrained({ grid, ...wanted }) }));
      const [best] = patterns.toSorted((a, b) => worth(b) - worth(a));
      if (!best?.value) throw new Error('a blank fits no sheet: it should have been refused before');
      const times = best.counts.flatMap((count, blank) => (count > 0 ? [(left[blank] ?? 0) / count] : []));
      batches.push({ pattern: best, count: Math.floor(Math.min(...times)) });
      this.#master.add(best);
    }
    return batches;
  }

  /**
   * Adds patterns as long as one is worth more than its sheet costs (P. C. Gilmore and R. E. Gomory, Operations
   * Research 9, 1961). Stops early when time is up. Undefined when the master gives up.
   */
  generate(): Proven | undefined {
    const parts = PARTS / Math.max(...this.#problem.sheets.map(({ cost }) => cost));
    let bound = 0;
    let pairs = QUICK;
    for (;;) {
      const prices = this.#master.relax();
      if (!prices) return undefined;
      const values = prices.map((price) => Math.max(1, Math.floor(price * parts)));
      const priced = this.#best(values, pairs).map((each, sheet) => this.#bounded(each, values, sheet));
      bound = Math.max(bound, valueBound(values, priced, this.#problem));
      const added = priced.filter((pattern) => this.#isBetter(pattern, prices) && this.#master.add(pattern));
      if (this.#isLate()) return { bound, values, priced };
      if (added.length > 0) continue;
      if (pairs === THOROUGH || priced.every((each) => each.value === each.bound))
        return { bound, values, priced };
      pairs = THOROUGH;
    }
  }

  /**
   * Adds patterns that are best for values near those of the proof, or between them and area: whole sheets often need
   * others than parts of sheets do, and fuller ones.
   */
  addNearby({ values }: Proven): void {
    const { blanks, demand } = this.#problem;
    const areas = blanks.map(({ width, height }) => width * height);
    const perArea = worthOf(demand, values) / worthOf(demand, areas);
    for (let time = 0; time < STRAYS && !this.#isLate(); time += 1) {
      const share = this.#nextRandom();
      const strayed = values.map((value, blank) => {
        const between = value + share * (perArea * (areas[blank] ?? 0) - value);
        return Math.ceil(between * (1 + STRAY * (this.#nextRandom() - 0.5)));
      });
      for (const pattern of this.#best(strayed, QUICK)) this.#master.add(pattern);
    }
  }

  /**
   * Adds every pattern that a plan cheaper than `cost` can use. Such a plan has no sheet to give away: each must come
   * near to what it costs, and often few patterns do (R. Baldacci et al., Mathematical Programming 115, 2008, list
   * routes in the same way).
   * @returns whether they are all there now, so that the best choice among them is the best plan or shows there is none.
   */
  addAllBelow(cost: number, { values, priced }: Proven): boolean {
    const { sheets, demand } = this.#problem;
    const worth = worthOf(demand, values);
    const most = Math.max(...priced.map(({ bound, sheet }) => bound / (sheets[sheet]?.cost ?? 1)));
    return this.#grids.every((grid, sheet) => {
      const least = Math.max(1, Math.floor(worth - (cost - 1 - (sheets[sheet]?.cost ?? 1)) * most));
      const listed = listConstrained({ grid, values, demand }, least);
      for (const { tree, counts } of listed ?? []) this.#master.add({ sheet, tree, counts });
      return listed !== undefined;
    });
  }

  /**
   * For each sheet size the best pattern found.
   * @param pairs how many pairs of blocks may be looked at where copies are short.
   */
  #best(values: readonly number[], pairs: number): readonly Priced[] {
    const { demand } = this.#problem;
    return this.#grids.map((grid, sheet) => ({ sheet, ...bestConstrained({ grid, values, demand }, pairs) }));
  }

  /** Where positions were left out, what no pattern can pass is asked of the relaxed sheet. */
  #bounded(priced: Priced, values: readonly number[], sheet: number): Priced {
    if (this.#grids[sheet]?.exact) return priced;
    const relaxed = this.#relaxed[sheet];
    return { ...priced, bound: relaxed ? new PatternTable(relaxed, values).value : Number.POSITIVE_INFINITY };
  }

  #isBetter({ counts, sheet }: Pattern, prices: readonly number[]): boolean {
    return worthOf(counts, prices) > (this.#problem.sheets[sheet]?.cost ?? 1) * BETTER;
  }

  /** From 0 to 1, the same in every run (a linear congruential generator, constants of Numerical Recipes). */
  #nextRandom(): number {
    this.#random = (this.#random * 1664525 + 1013904223) % 4294967296;
    return this.#random / 4294967296;
  }
}

/** Steps along the longer edge of a relaxed sheet; few enough for every position to be there. */
const RELAXED_STEPS = 400;

/** Blanks a little too small on a sheet too large; undefined when a blank is so small that it would vanish. */
function relaxedGrid({ blanks, sheets, safe }: CuttingProblem, index: number): CutGrid | undefined {
  const { width = 0, height = 0 } = (safe?.sheets ?? sheets)[index] ?? {};
  const step = Math.ceil(Math.max(width, height) / RELAXED_STEPS);
  const smaller = blanks.map(({ turnable }, blank) => {
    const size = (safe?.blanks ?? blanks)[blank] ?? { width: 0, height: 0 };
    return { width: Math.floor(size.width / step), height: Math.floor(size.height / step), turnable };
  });
  if (smaller.some((blank) => blank.width === 0 || blank.height === 0)) return undefined;
  return gridOf(smaller, { width: Math.ceil(width / step), height: Math.ceil(height / step) });
}
