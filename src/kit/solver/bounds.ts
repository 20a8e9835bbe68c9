import { type Rect, stancesOn } from './cut-tree.ts';
import type { CuttingProblem, Priced, SheetSource } from './problem.ts';

/**
 * What every plan has to cover: were every blank worth so much, all that is wanted would be worth `worth`, and no sheet
 * of each size can be cut for more than `each` says (A. A. Farley, Operations Research 38, 1990). Whole numbers.
 */
export type CoverBound = { readonly worth: number; readonly each: readonly number[] };

/** So many packs of each size, and what they cost together. */
export type Basket = { readonly packs: readonly number[]; readonly cost: number };

/** Areas become whole numbers of this many parts of all that is wanted. */
const PARTS = 2n ** 40n;

/** By area alone: a sheet covers at most its own. A size that no blank fits counts for nothing. */
export function areaCover({ blanks, demand, sheets, safe }: CuttingProblem): CoverBound {
  const needed = (safe?.blanks ?? blanks).reduce(
    (total, blank, index) => total + areaOf(blank) * BigInt(demand[index] ?? 0),
    0n,
  );
  const each = sheets.map((sheet, index) => {
    const isUsed = blanks.some((blank) => stancesOn(blank, sheet).length > 0);
    const part = areaOf(safe?.sheets[index] ?? sheet) * PARTS;
    return isUsed && needed > 0n ? Number((part + needed - 1n) / needed) : 0;
  });
  return { worth: needed > 0n ? Number(PARTS) : 0, each };
}

function areaOf({ width, height }: Rect): bigint {
  return BigInt(width) * BigInt(height);
}

/** What such values of the blanks say, given the best pattern of each size; undefined where one is not known. */
export function coverOf(
  values: readonly number[],
  priced: readonly Priced[],
  { demand }: CuttingProblem,
): CoverBound | undefined {
  const each = priced.map(({ bound }) => bound);
  if (!each.every(Number.isFinite)) return undefined;
  return { worth: values.reduce((sum, value, blank) => sum + value * (demand[blank] ?? 0), 0), each };
}

/** How much a cover still lacks when all that is there and in a basket is cut; 0 or less where it may be enough. */
export function lackOf(
  { worth, each }: CoverBound,
  { packs }: Basket,
  sheets: readonly SheetSource[],
): number {
  return sheets.reduce(
    (left, { pack = 1, there = 0 }, sheet) =>
      left - (there + pack * (packs[sheet] ?? 0)) * (each[sheet] ?? 0),
    worth,
  );
}

/** More baskets than this are not compared. */
const MOST_STEPS = 100_000;

/**
 * The cheapest packs that cover all that has to be covered: no plan costs less. Exact, by trying, where sizes are few;
 * otherwise packs may be opened in part.
 */
export function cheapestBasket(covers: readonly CoverBound[], sheets: readonly SheetSource[]): Basket {
  const none: Basket = { packs: sheets.map(() => 0), cost: 0 };
  const lacks = covers.map((cover) => lackOf(cover, none, sheets));
  return (
    new BasketSearch(covers, sheets).run(lacks) ?? { ...none, cost: leastCost(covers, lacks, sheets, 0) }
  );
}

class BasketSearch {
  readonly #covers: readonly CoverBound[];
  readonly #sheets: readonly SheetSource[];
  #best: Basket | undefined;
  #steps = 0;

  constructor(covers: readonly CoverBound[], sheets: readonly SheetSource[]) {
    this.#covers = covers;
    this.#sheets = sheets;
  }

  /** Undefined where there were too many to try. */
  run(lacks: readonly number[]): Basket | undefined {
    this.#fill([], 0, lacks);
    return this.#steps > MOST_STEPS ? undefined : this.#best;
  }

  /** Takes from none to as many packs of the next size as would do alone, then the sizes after it. */
  #fill(packs: readonly number[], cost: number, lacks: readonly number[]): void {
    this.#steps += 1;
    const size = packs.length;
    const source = this.#sheets[size];
    const rest = leastCost(this.#covers, lacks, this.#sheets, size);
    if (this.#steps > MOST_STEPS || cost + rest >= (this.#best?.cost ?? Number.POSITIVE_INFINITY)) return;
    if (!source) {
      this.#best = { packs, cost };
      return;
    }
    const { pack = 1 } = source;
    const worth = this.#covers.map(({ each }) => pack * (each[size] ?? 0));
    const enough = lacks.map((lack, index) => packsFor(lack, worth[index] ?? 0));
    const most = Math.max(0, ...enough.filter(Number.isFinite));
    for (let count = most; count >= 0; count -= 1) {
      const left = lacks.map((lack, index) => lack - count * (worth[index] ?? 0));
      this.#fill([...packs, count], cost + count * source.cost, left);
    }
  }
}

function packsFor(lack: number, worth: number): number {
  if (lack <= 0) return 0;
  return worth > 0 ? Math.ceil(lack / worth) : Number.POSITIVE_INFINITY;
}

/** The least that what is lacking costs in packs of the sizes from one on, opened in part; rounded up. */
function leastCost(
  covers: readonly CoverBound[],
  lacks: readonly number[],
  sheets: readonly SheetSource[],
  from: number,
): number {
  const costs = covers.map(({ each }, index) => {
    const lack = lacks[index] ?? 0;
    if (lack <= 0) return 0;
    const best = sheets.slice(from).reduce((most, { cost, pack = 1 }, later) => {
      return Math.max(most, (pack * (each[from + later] ?? 0)) / cost);
    }, 0);
    return best > 0 ? Math.ceil(lack / best - 1e-9) : Number.POSITIVE_INFINITY;
  });
  return Math.max(0, ...costs);
}
