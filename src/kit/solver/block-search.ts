import { AreaCeiling } from './area-ceiling.ts';
import { stancesOn } from './blank.ts';
import { along, type CutEdge, type CutTree, inCorner, type Rect, resized, sideBySide } from './cut-tree.ts';
import { indexOf } from './grid.ts';
import type { PatternTable } from './pattern-table.ts';
import { RankedQueue } from './queue.ts';
import { Remainder } from './remainder.ts';
import type { Wanted } from './wanted.ts';

/** Blanks put together in a rectangle, and the positions it reaches to. */
type Block = {
  readonly tree: CutTree;
  readonly value: number;
  readonly counts: Uint16Array;
  readonly column: number;
  readonly row: number;
};

/**
 * Joins blocks, the most promising first, with at most so many copies of each blank (K. V. Viswanathan and A. Bagchi,
 * "Best-first search methods for constrained two-dimensional cutting stock problems", Operations Research 41, 1993).
 */
export class BlockSearch {
  readonly #wanted: Wanted;
  readonly #remainder: Remainder;
  readonly #ceiling: AreaCeiling;
  readonly #floor: () => number;
  readonly #found: (whole: CutTree) => void;
  readonly #open = new RankedQueue<Block>();
  readonly #closed: Block[] = [];
  readonly #known = new Map<string, Rect[]>();
  #pairs: number;

  /**
   * @param table the best patterns for these values, any number of each blank allowed.
   * @param pairs how many pairs of blocks may be looked at.
   * @param floor what can lead to nothing worth more than this is dropped.
   * @param found told of each whole sheet on the way; copies may be too many, cuts too long.
   */
  constructor(
    wanted: Wanted,
    table: PatternTable,
    pairs: number,
    floor: () => number,
    found: (whole: CutTree) => void,
  ) {
    this.#wanted = wanted;
    this.#pairs = pairs;
    this.#floor = floor;
    this.#found = found;
    this.#remainder = new Remainder(wanted.grid, table);
    this.#ceiling = new AreaCeiling(wanted.grid, wanted.values, wanted.demand);
  }

  /**
   * @returns the most that any pattern can be worth that was not found: at most the floor where the search came to its
   * end.
   */
  run(): number {
    this.#offerSingles();
    while ((this.#open.topRank ?? 0) > this.#floor()) {
      const rank = this.#open.topRank ?? 0;
      const block = this.#open.pop();
      if (!block) break;
      this.#found(this.#remainder.complete(block.tree, block.column, block.row));
      this.#closed.push(block);
      if (!this.#joinWithClosed(block)) return rank;
    }
    return this.#open.topRank ?? 0;
  }

  #offerSingles(): void {
    const { grid, values, demand } = this.#wanted;
    for (const [index, blank] of grid.blanks.entries()) {
      const value = values[index] ?? 0;
      if (value <= 0 || (demand[index] ?? 0) < 1) continue;
      const counts = new Uint16Array(grid.blanks.length);
      counts[index] = 1;
      for (const { turned, ...rect } of stancesOn(blank, grid.sheet))
        this.#offer(rect, value, counts, () => ({ ...rect, kind: 'blank', blank: index, turned }));
    }
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
    const { sheet, longest } = this.#wanted.grid;
    const [one, other] = [first.tree, second.tree];
    const sideways = from === 'left';
    const width = sideways ? one.width + other.width : Math.max(one.width, other.width);
    const height = sideways ? Math.max(one.height, other.height) : one.height + other.height;
    if (width > sheet.width || height > sheet.height) return;
    const whole = { width, height };
    this.#offer(whole, first.value + second.value, counts, () => {
      const parts = [one, other].map((part) =>
        inCorner(part, resized(whole, from, along(part, from)), longest),
      );
      return sideBySide(parts, from);
    });
  }

  /** Puts a block in the queue unless it leads to nothing or the same blanks are known in less room. */
  #offer({ width, height }: Rect, value: number, counts: Uint16Array, tree: () => CutTree): void {
    const { across, down, sheet, longest } = this.#wanted.grid;
    const [column, row] = [indexOf(across, width), indexOf(down, height)];
    if (column === undefined || row === undefined) return;
    const beside = Math.min(this.#remainder.at(column, row), this.#ceiling.beside(counts, width, height));
    if (value + beside <= this.#floor() || this.#isKnown(counts, width, height)) return;
    const block = { tree: tree(), value, counts, column, row };
    this.#open.push(value + beside, block);
    if (value > this.#floor()) this.#found(inCorner(block.tree, sheet, longest));
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

function sum(one: Uint16Array, other: Uint16Array, most: readonly number[]): Uint16Array | undefined {
  const counts = new Uint16Array(one.length);
  for (let index = 0; index < counts.length; index += 1) {
    const count = (one[index] ?? 0) + (other[index] ?? 0);
    if (count > (most[index] ?? 0)) return undefined;
    counts[index] = count;
  }
  return counts;
}
