import { AreaCeiling } from './area-ceiling.ts';
import { type CutEdge, type CutTree, type Rect, stancesOf, WASTE } from './blank.ts';
import { type Grid, indexOf } from './grid.ts';
import type { PatternTable } from './pattern-table.ts';
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

/** A rectangle of blanks, put together by laying two smaller ones side by side, and the positions it reaches to. */
export type Block = Rect & {
  readonly value: number;
  readonly counts: Uint16Array;
  readonly made: Making;
  readonly column: number;
  readonly row: number;
};

/** How a block comes about. */
type Making =
  | { readonly kind: 'single'; readonly blank: number; readonly turned: boolean }
  | { readonly kind: 'joined'; readonly first: Block; readonly second: Block; readonly from: CutEdge };

/** What a search listens for. */
export type Interest = {
  /** A block that can lead to nothing worth more than this is dropped. */
  readonly floor: () => number;
  /** Told of each block when it is put together. */
  readonly made: (block: Block) => void;
  /** Told of each block before it is joined with those before it. */
  readonly taken: (block: Block) => void;
};

/**
 * Joins blocks, the most promising first, with at most so many copies of each blank (K. V. Viswanathan and A. Bagchi,
 * "Best-first search methods for constrained two-dimensional cutting stock problems", Operations Research 41, 1993).
 */
export class BlockSearch {
  readonly remainder: Remainder;
  readonly #wanted: Wanted;
  readonly #interest: Interest;
  readonly #ceiling: AreaCeiling;
  readonly #open = new RankedQueue<Block>();
  readonly #closed: Block[] = [];
  readonly #known = new Map<string, Rect[]>();
  #pairs: number;

  /**
   * @param table the best patterns for these values, any number of each blank allowed.
   * @param pairs how many pairs of blocks may be looked at.
   */
  constructor(wanted: Wanted, table: PatternTable, pairs: number, interest: Interest) {
    this.#wanted = wanted;
    this.#interest = interest;
    this.#pairs = pairs;
    this.remainder = new Remainder(wanted.grid, table);
    this.#ceiling = new AreaCeiling(wanted.grid, wanted.values, wanted.demand);
  }

  /**
   * @returns the most that any pattern can be worth that was not put together: at most the floor where the search came
   * to its end.
   */
  run(): number {
    for (const { rect, value, counts, made } of singles(this.#wanted)) this.#offer(rect, value, counts, made);
    while ((this.#open.topRank ?? 0) > this.#interest.floor()) {
      const rank = this.#open.topRank ?? 0;
      const block = this.#open.pop();
      if (!block) break;
      this.#interest.taken(block);
      this.#closed.push(block);
      if (!this.#joinWithClosed(block)) return rank;
    }
    return this.#open.topRank ?? 0;
  }

  /** @returns false when the pairs are used up. */
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
    const { sheet } = this.#wanted.grid;
    const sideways = from === 'left';
    const width = sideways ? first.width + second.width : Math.max(first.width, second.width);
    const height = sideways ? Math.max(first.height, second.height) : first.height + second.height;
    if (width > sheet.width || height > sheet.height) return;
    const value = first.value + second.value;
    this.#offer({ width, height }, value, counts, { kind: 'joined', first, second, from });
  }

  /** Puts a block in the queue unless it leads to nothing or the same blanks are known in less room. */
  #offer({ width, height }: Rect, value: number, counts: Uint16Array, made: Making): void {
    const { across, down } = this.#wanted.grid;
    const [column, row] = [indexOf(across, width), indexOf(down, height)];
    if (column === undefined || row === undefined) return;
    const beside = Math.min(this.remainder.at(column, row), this.#ceiling.beside(counts, width, height));
    if (value + beside <= this.#interest.floor() || this.#isKnown(counts, width, height)) return;
    const block = { width, height, value, counts, made, column, row };
    this.#open.push(value + beside, block);
    this.#interest.made(block);
  }

  #isKnown(counts: Uint16Array, width: number, height: number): boolean {
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

type Single = {
  readonly rect: Rect;
  readonly value: number;
  readonly counts: Uint16Array;
  readonly made: Making;
};

function singles({ grid: { blanks, sheet }, values, demand }: Wanted): readonly Single[] {
  return blanks.flatMap((blank, index) => {
    const value = values[index] ?? 0;
    if (value <= 0 || (demand[index] ?? 0) < 1) return [];
    const counts = new Uint16Array(blanks.length);
    counts[index] = 1;
    return stancesOf(blank)
      .filter(({ width, height }) => width <= sheet.width && height <= sheet.height)
      .map(({ width, height, turned }): Single => {
        return { rect: { width, height }, value, counts, made: { kind: 'single', blank: index, turned } };
      });
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

/** How a block is cut up. */
export function treeOf({ made }: Block, longest: number): CutTree {
  if (made.kind === 'single') return { kind: 'blank', blank: made.blank, turned: made.turned };
  const { first, second, from } = made;
  const sideways = from === 'left';
  const inner = sideways
    ? { height: Math.max(first.height, second.height) }
    : { width: Math.max(first.width, second.width) };
  return {
    kind: 'cut',
    from,
    at: sideways ? first.width : first.height,
    near: trimmed(first, { ...first, ...inner }, longest),
    far: trimmed(second, { ...second, ...inner }, longest),
  };
}

/** A block in the corner of a room: what it does not fill is cut off, from the left first if that cut is short enough. */
export function trimmed(block: Block, room: Rect, longest: number): CutTree {
  const right = (near: CutTree): CutTree =>
    block.width < room.width ? { kind: 'cut', from: 'left', at: block.width, near, far: WASTE } : near;
  const below = (near: CutTree): CutTree =>
    block.height < room.height ? { kind: 'cut', from: 'top', at: block.height, near, far: WASTE } : near;
  const tree = treeOf(block, longest);
  return room.height <= longest ? right(below(tree)) : below(right(tree));
}
