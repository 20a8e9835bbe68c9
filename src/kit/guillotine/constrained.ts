import { type CutEdge, type CutTree, clipped, countBlanks, type Rect, stancesOf, WASTE } from './blank.ts';
import { type Grid, indexOf } from './grid.ts';
import { PatternTable } from './pattern-table.ts';
import { RankedQueue } from './queue.ts';
import { Remainder } from './remainder.ts';

/** What is to be found: the grid says which blanks there are, what sheet, and how long a cut may be. */
export type Wanted = {
  readonly grid: Grid;
  /** What each blank is worth: whole numbers, not negative. */
  readonly values: readonly number[];
  /** The most copies of each. */
  readonly demand: readonly number[];
};

export type Budget = {
  /** How many pairs of blocks may be looked at. */
  readonly pairs: number;
  /** A pattern worth more than this is as good as the best; the search ends with it. */
  readonly enough?: number;
};

type Tried = { readonly tree: CutTree; readonly counts: readonly number[]; readonly value: number };

export type Found = Tried & {
  /** No pattern is worth more than this; the value itself where the search came to its end. */
  readonly bound: number;
};

/** A rectangle of blanks, put together by laying two smaller ones side by side. */
type Block = Rect & {
  readonly value: number;
  readonly counts: Uint16Array;
  readonly tree: CutTree;
};

/**
 * The best pattern with at most so many copies of each blank: blocks are joined from the most promising up
 * (K. V. Viswanathan and A. Bagchi, "Best-first search methods for constrained two-dimensional cutting stock
 * problems", Operations Research 41, 1993). When the budget ends first, the best found and a bound.
 */
export function bestConstrained(wanted: Wanted, budget: Budget): Found {
  return new BestFirst(wanted, budget).search();
}

class BestFirst {
  readonly #wanted: Wanted;
  readonly #table: PatternTable;
  readonly #remainder: Remainder;
  readonly #enough: number;
  #pairs: number;
  readonly #open = new RankedQueue<Block>();
  readonly #closed: Block[] = [];
  readonly #known = new Map<string, Rect[]>();
  #best: Tried;

  constructor(wanted: Wanted, budget: Budget) {
    this.#wanted = wanted;
    this.#table = new PatternTable(wanted.grid, wanted.values);
    this.#remainder = new Remainder(wanted.grid, this.#table);
    this.#pairs = budget.pairs;
    this.#enough = budget.enough ?? Number.POSITIVE_INFINITY;
    this.#best = this.#firstTry();
  }

  search(): Found {
    const { value: most } = this.#table;
    for (const block of singles(this.#wanted)) this.#offer(block);
    while (this.#openRank > this.#best.value && this.#best.value <= this.#enough) {
      const rank = this.#openRank;
      const block = this.#open.pop();
      if (!block) break;
      this.#closed.push(block);
      if (this.#joinWithClosed(block)) continue;
      this.#open.push(rank, block);
      break;
    }
    const bound = this.#isSure ? Math.max(this.#best.value, this.#openRank) : most;
    return { ...this.#best, bound: Math.min(bound, most) };
  }

  get #openRank(): number {
    return this.#open.topRank ?? 0;
  }

  /** The best pattern for any number of copies, without the copies that are too many. */
  #firstTry(): Tried {
    const { grid, values, demand } = this.#wanted;
    const tree = clipped(this.#table.tree(), demand);
    const counts = countBlanks(tree, grid.blanks.length);
    const value = counts.reduce((total, count, index) => total + count * (values[index] ?? 0), 0);
    return { tree, counts, value };
  }

  /** Where cuts are limited or positions left out, joining blocks may miss a pattern: its end proves nothing. */
  get #isSure(): boolean {
    return this.#wanted.grid.exact && this.#wanted.grid.longest === Number.POSITIVE_INFINITY;
  }

  /** @returns false when the budget is used up. */
  #joinWithClosed(block: Block): boolean {
    for (const other of this.#closed) {
      this.#pairs -= 1;
      if (this.#pairs <= 0) return false;
      const counts = sum(block.counts, other.counts, this.#wanted.demand);
      if (!counts) continue;
      this.#join(block, other, counts, 'left');
      this.#join(block, other, counts, 'top');
    }
    return true;
  }

  #join(first: Block, second: Block, counts: Uint16Array, from: CutEdge): void {
    const { sheet, longest } = this.#wanted.grid;
    const sideways = from === 'left';
    const width = sideways ? first.width + second.width : Math.max(first.width, second.width);
    const height = sideways ? Math.max(first.height, second.height) : first.height + second.height;
    if (width > sheet.width || height > sheet.height) return;
    if ((sideways ? height : width) > longest) return;
    const inner = sideways ? { height } : { width };
    const tree: CutTree = {
      kind: 'cut',
      from,
      at: sideways ? first.width : first.height,
      near: trimmed(first, { ...first, ...inner }, longest),
      far: trimmed(second, { ...second, ...inner }, longest),
    };
    this.#offer({ width, height, value: first.value + second.value, counts, tree });
  }

  /** Puts a block in the queue unless it cannot become the best or the same blanks are known in less room. */
  #offer(block: Block): void {
    const { across, down, sheet, longest } = this.#wanted.grid;
    const [column, row] = [indexOf(across, block.width), indexOf(down, block.height)];
    if (column === undefined || row === undefined) return;
    const rank = block.value + this.#remainder.at(column, row);
    if (rank <= this.#best.value || this.#isKnown(block)) return;
    this.#open.push(rank, block);
    if (block.value > this.#best.value && canBeTrimmed(block, sheet, longest)) {
      const tree = trimmed(block, sheet, longest);
      this.#best = { tree, counts: [...block.counts], value: block.value };
    }
  }

  #isKnown({ counts, width, height }: Block): boolean {
    const key = counts.join();
    const known = this.#known.get(key);
    if (!known) {
      this.#known.set(key, [{ width, height }]);
      return false;
    }
    if (known.some((each) => each.width <= width && each.height <= height)) return true;
    known.push({ width, height });
    return false;
  }
}

function singles({ grid: { blanks, sheet }, values, demand }: Wanted): readonly Block[] {
  return blanks.flatMap((blank, index) => {
    const value = values[index] ?? 0;
    if (value <= 0 || (demand[index] ?? 0) < 1) return [];
    const counts = new Uint16Array(blanks.length);
    counts[index] = 1;
    return stancesOf(blank)
      .filter(({ width, height }) => width <= sheet.width && height <= sheet.height)
      .map(({ width, height, turned }) => ({
        width,
        height,
        value,
        counts,
        tree: { kind: 'blank', blank: index, turned },
      }));
  });
}

function sum(one: Uint16Array, other: Uint16Array, most: readonly number[]): Uint16Array | undefined {
  const counts = new Uint16Array(one.length);
  for (let index = 0; index < counts.length; index += 1) {
    const count = (one[index] ?? 0) + (other[index] ?? 0);
    if (count > (most[index] ?? 0)) return undefined;
    counts[index] = count;
  }
  return counts;
}

function canBeTrimmed(block: Rect, room: Rect, longest: number): boolean {
  const [narrower, lower] = [block.width < room.width, block.height < room.height];
  if (narrower && lower)
    return (
      (room.height <= longest && block.width <= longest) || (room.width <= longest && block.height <= longest)
    );
  return (!narrower || room.height <= longest) && (!lower || room.width <= longest);
}

/** A block in the corner of a room: what it does not fill is cut off, the longer cut first if that is short enough. */
function trimmed(block: Block, room: Rect, longest: number): CutTree {
  const right = (near: CutTree): CutTree =>
    block.width < room.width ? { kind: 'cut', from: 'left', at: block.width, near, far: WASTE } : near;
  const below = (near: CutTree): CutTree =>
    block.height < room.height ? { kind: 'cut', from: 'top', at: block.height, near, far: WASTE } : near;
  return room.height <= longest ? right(below(block.tree)) : below(right(block.tree));
}
