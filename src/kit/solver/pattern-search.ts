import { areaCover, type Basket, type CoverBound, coverOf, lackOf } from './bounds.ts';
import { bestConstrained, goodConstrained, listConstrained, tableOf } from './constrained.ts';
import { type CutGrid, gridOf } from './grid.ts';
import type { Master, Prices } from './master.ts';
import { type Batch, type CuttingProblem, type Priced, stillWanted, worthOf } from './problem.ts';
import { relaxedGrid } from './relaxed-grid.ts';
import type { Work } from './work.ts';

/**
 * Prices become whole numbers of these parts of the dearest sheet's cost, so that everything after them is exact. What
 * costs nothing is worth one part, so that it is cut too where there is room.
 */
const PARTS = 2 ** 22;

/** What a new pattern must be better by, relative to its sheet's cost. */
const BETTER = 1 + 1e-7;

/** Pairs of blocks looked at for a pattern: none while patterns are easily found, most where its worth is to be proven. */
const QUICK = 4_000;
const PAIRS = [0, QUICK, 150_000] as const;

/** Sheets that cost nothing are taken before all others. */
const FREE = 1e6;

/** The largest area a blank counts with. */
const MOST_AREA = 2 ** 36;

/** The part of the work that goes to the proof at most: good plans need some of it too. */
const PROVING = 0.5;

/** How far values stray when other patterns are looked for, and how often. */
const STRAY = 0.6;
const STRAYS = 20;

/** Values of the blanks, and the best patterns for them: together they say what every plan has to cover. */
type Proof = { readonly values: readonly number[]; readonly priced: readonly Priced[] };

/** Whether the sheets of a basket are enough, as far as can be said. */
type Sufficiency = 'perhaps' | 'no' | 'unknown';

/** Finds patterns for a master to choose from. The positions where a sheet may be cut are found once. */
export class PatternSearch {
  readonly #problem: CuttingProblem;
  readonly #master: Master;
  readonly #work: Work;
  readonly #isLate: (part: number) => boolean;
  readonly #grids: readonly CutGrid[];
  readonly #relaxed: readonly (CutGrid | undefined)[];
  readonly #covers: CoverBound[];
  #random = 1;

  /** @param isLate whether so much of the work is done, from 0 to 1. */
  constructor(problem: CuttingProblem, master: Master, work: Work, isLate: (part: number) => boolean) {
    const { blanks, demand, longest, sheets, safe } = problem;
    this.#problem = problem;
    this.#master = master;
    this.#work = work;
    this.#isLate = isLate;
    this.#covers = [areaCover(problem)];
    this.#grids = sheets.map((sheet) => {
      const grid = gridOf(blanks, sheet, { demand, longest });
      return { ...grid, exact: grid.exact && !safe };
    });
    this.#relaxed = this.#grids.map(({ exact }, sheet) => (exact ? undefined : relaxedGrid(problem, sheet)));
  }

  /** What every plan has to cover, as far as it is known. */
  get covers(): readonly CoverBound[] {
    return this.#covers;
  }

  /**
   * A good plan at once: sheet after sheet is cut for the most area of pieces, and each way to cut a sheet is repeated
   * while it gives nothing that is too much. Sheets that are there, or in an opened pack, go first. Patterns are added.
   */
  fillSheets(): readonly Batch[] {
    const { blanks, sheets, demand } = this.#problem;
    const areas = this.#areas();
    const there = sheets.map((sheet) => sheet.there ?? 0);
    const batches: Batch[] = [];
    for (let left = demand; left.some((wanted) => wanted > 0); left = stillWanted(demand, batches)) {
      const values = blanks.map((_, blank) => (left[blank] ? (areas[blank] ?? 0) : 0));
      const all = worthOf(left, values);
      const patterns = this.#grids.map((grid, sheet) => ({
        sheet,
        ...goodConstrained({ grid, values, demand: left }, this.#work),
      }));
      const rate = ({ value, sheet }: Omit<Priced, 'bound'>): number => {
        const { cost = 1, pack = 1, use = 1 } = sheets[sheet] ?? {};
        if (there[sheet]) return (value / use) * FREE;
        return pack === 0 ? 0 : Math.min(all, value * pack) / cost;
      };
      const [best] = patterns.toSorted((a, b) => rate(b) - rate(a));
      if (!best || rate(best) === 0)
        throw new Error('a blank fits no sheet: it should have been refused before');
      const times = best.counts.flatMap((count, blank) => (count > 0 ? [(left[blank] ?? 0) / count] : []));
      const most = Math.floor(Math.min(...times));
      const { pack = 1 } = sheets[best.sheet] ?? {};
      const missing = Math.max(0, most - (there[best.sheet] ?? 0));
      const bought = pack > 0 && !there[best.sheet] ? Math.ceil(missing / pack) * pack : 0;
      const stock = (there[best.sheet] ?? 0) + bought;
      const count = Math.min(most, stock);
      there[best.sheet] = stock - count;
      batches.push({ pattern: best, count });
      this.#master.add(best);
    }
    return batches;
  }

  /**
   * Adds patterns as long as one is worth more than its sheet costs (P. C. Gilmore and R. E. Gomory, Operations
   * Research 9, 1961). Stops early when the work is done. Undefined when the master gives up.
   */
  generate(): Proof | undefined {
    const dearest = Math.max(
      ...this.#problem.sheets.map(({ cost, pack = 1 }) => (pack > 0 ? cost / pack : 0)),
    );
    let last: Proof | undefined;
    for (const pairs of PAIRS) {
      for (let isAdded = true; isAdded; ) {
        const prices = this.#master.relax();
        if (!prices) return undefined;
        last = this.#prove(prices, PARTS / dearest, pairs);
        isAdded = this.#addBetter(last, prices);
        if (this.#isLate(PROVING)) return last;
      }
      if (last && isExact(last)) return last;
    }
    return last;
  }

  /**
   * Whether what is there and in a basket could do, parts of sheets allowed; adds patterns for it. Where it cannot do,
   * there is a new cover that says so.
   */
  tryBasket(basket: Basket): Sufficiency {
    for (const pairs of PAIRS) {
      for (let isAdded = true; isAdded; ) {
        const prices = this.#master.relaxWithin(basket);
        if (!prices || this.#isLate(1)) return 'unknown';
        if (!prices.isShort) return 'perhaps';
        const proof = this.#prove(prices, PARTS, pairs);
        const cover = this.#covers.at(-1);
        if (cover && lackOf(cover, basket, this.#problem.sheets) > 0) return 'no';
        isAdded = this.#addBetter(proof, prices);
      }
    }
    return 'unknown';
  }

  #prove({ blanks }: Prices, parts: number, pairs: number): Proof {
    const values = blanks.map((price) => Math.max(1, Math.floor(price * parts)));
    const priced = this.#best(values, pairs).map((each, sheet) => this.#bounded(each, values, sheet));
    const cover = coverOf(values, priced, this.#problem);
    if (cover) this.#covers.push(cover);
    return { values, priced };
  }

  #addBetter({ priced }: Proof, { blanks, sheets }: Prices): boolean {
    const better = priced.filter(
      ({ counts, sheet }) => worthOf(counts, blanks) > (sheets[sheet] ?? 0) * BETTER + 1e-9,
    );
    return better.filter((pattern) => this.#master.add(pattern)).length > 0;
  }

  /** Of the blanks, as whole numbers that stay exact when they are added. */
  #areas(): readonly number[] {
    const { blanks } = this.#problem;
    const most = Math.max(...blanks.map(({ width, height }) => width * height));
    const part = Math.max(1, most / MOST_AREA);
    return blanks.map(({ width, height }) => Math.max(1, Math.ceil((width * height) / part)));
  }

  /**
   * Adds patterns that are best for values near those of the proof, or between them and area: whole sheets often need
   * others than parts of sheets do, and fuller ones.
   */
  addNearby({ values }: Proof): void {
    const { demand } = this.#problem;
    const areas = this.#areas();
    const perArea = worthOf(demand, values) / worthOf(demand, areas);
    for (let time = 0; time < STRAYS && !this.#isLate(1); time += 1) {
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
  addAllBelow(cost: number, { values, priced }: Proof): boolean {
    const { sheets, demand } = this.#problem;
    const perCost = sheets.map(
      ({ cost: price, pack = 1 }, sheet) => (pack * (priced[sheet]?.bound ?? 0)) / price,
    );
    const free = sheets.reduce((sum, { there = 0 }, sheet) => sum + there * (priced[sheet]?.bound ?? 0), 0);
    const spare = (cost - 1) * Math.max(...perCost) + free - worthOf(demand, values);
    return this.#grids.every((grid, sheet) => {
      const least = Math.max(1, Math.floor((priced[sheet]?.bound ?? 0) - spare));
      const listed = listConstrained({ grid, values, demand }, least, this.#work);
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
    return this.#grids.map((grid, sheet) => ({
      sheet,
      ...bestConstrained({ grid, values, demand }, pairs, this.#work),
    }));
  }

  /** Where positions were left out, what no pattern can pass is asked of the relaxed sheet. */
  #bounded(priced: Priced, values: readonly number[], sheet: number): Priced {
    if (this.#grids[sheet]?.exact) return priced;
    const relaxed = this.#relaxed[sheet];
    const bound = relaxed ? tableOf(relaxed, values, this.#work).value : Number.POSITIVE_INFINITY;
    return { ...priced, bound };
  }

  /** From 0 to 1, the same in every run (a linear congruential generator, constants of Numerical Recipes). */
  #nextRandom(): number {
    this.#random = (this.#random * 1664525 + 1013904223) % 4294967296;
    return this.#random / 4294967296;
  }
}

/** Nothing is worth more for these values than what was found. */
function isExact({ priced }: Proof): boolean {
  return priced.every(({ value, bound }) => value === bound);
}
