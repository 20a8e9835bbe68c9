import FlatQueue from 'flatqueue';
import { indexOf } from './axis.ts';
import {
  along,
  type CutEdge,
  type CutTree,
  inCorner,
  type Rect,
  resized,
  sideBySide,
  stancesOn,
} from './cut-tree.ts';
import type { CutGrid } from './grid.ts';
import { type PatternTable, Remainder } from './pattern-table.ts';

/** What is to be found: the grid says which blanks there are, what sheet, and how long a cut may be. */
export type Wanted = {
  readonly grid: CutGrid;
  /** What each blank is worth: whole numbers, not negative. */
  readonly values: readonly number[];
  /** The most copies of each. */
  readonly demand: readonly number[];
};

/** Blanks put together in a rectangle, and the positions it reaches to. */
type Block = Rect & {
  /** Few of many thousands of blocks are ever cut: a tree is made when it is asked for. */
  readonly tree: () => CutTree;
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
  readonly #floor: () => number;
  readonly #found: (whole: CutTree) => void;
  readonly #densest: ReturnType<typeof densestFirst>;
  /** The lowest first: by what they promise, less than zero. */
  readonly #open = new FlatQueue<Block>();
  readonly #closed: Block[] = [];
  readonly #known = new Map<string, Rect[]>();
  readonly #pairs: number;
  #looked = 0;

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
    this.#densest = densestFirst(wanted);
  }

  /**
   * @returns the most that any pattern can be worth that was not found: at most the floor where the search came to its
   * end.
   */
  run(): number {
    this.#offerSingles();
    for (;;) {
      const most = -(this.#open.peekValue() ?? 0);
      const block = most > this.#floor() ? this.#open.pop() : undefined;
      if (!block) return most;
      if (this.#worthCompleted(block) > this.#floor())
        this.#found(this.#remainder.complete(block.tree(), block.column, block.row));
      this.#closed.push(block);
      if (!this.#joinWithClosed(block)) return most;
    }
  }

  /** How many pairs of blocks were looked at. */
  get looked(): number {
    return this.#looked;
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
      this.#looked += 1;
      if (this.#looked >= this.#pairs) return false;
      const counts = this.#together(block.counts, other.counts);
      if (!counts) continue;
      this.#join(block, other, counts, 'left');
      this.#join(block, other, counts, 'top');
    }
    return true;
  }

  /** The copies of two blocks; undefined where they are too many. */
  #together(one: Uint16Array, other: Uint16Array): Uint16Array | undefined {
    const { demand } = this.#wanted;
    for (let blank = 0; blank < one.length; blank += 1)
      if ((one[blank] ?? 0) + (other[blank] ?? 0) > (demand[blank] ?? 0)) return undefined;
    return one.map((count, blank) => count + (other[blank] ?? 0));
  }

  /** What a block is worth with the most worth beside it, without the copies that are then too many. */
  #worthCompleted({ counts, column, row }: Block): number {
    const { values, demand } = this.#wanted;
    const beside = this.#remainder.countsBeside(column, row);
    return values.reduce(
      (sum, value, blank) =>
        sum + value * Math.min((counts[blank] ?? 0) + (beside[blank] ?? 0), demand[blank] ?? 0),
      0,
    );
  }

  #join(one: Block, other: Block, counts: Uint16Array, from: CutEdge): void {
    const { sheet, longest } = this.#wanted.grid;
    const sideways = from === 'left';
    const width = sideways ? one.width + other.width : Math.max(one.width, other.width);
    const height = sideways ? Math.max(one.height, other.height) : one.height + other.height;
    if (width > sheet.width || height > sheet.height) return;
    const whole = { width, height };
    this.#offer(whole, one.value + other.value, counts, () => {
      const parts = [one, other].map((part) =>
        inCorner(part.tree(), resized(whole, from, along(part, from)), longest),
      );
      return sideBySide(parts, from);
    });
  }

  /** Puts a block in the queue unless it leads to nothing or the same blanks are known in less room. */
  #offer(rect: Rect, value: number, counts: Uint16Array, tree: () => CutTree): void {
    const { across, down, sheet, longest } = this.#wanted.grid;
    const [column, row] = [indexOf(across, rect.width), indexOf(down, rect.height)];
    if (column === undefined || row === undefined) return;
    const most = value + Math.min(this.#remainder.at(column, row), this.#worthBeside(counts, rect));
    if (most <= this.#floor() || this.#isKnown(counts, rect)) return;
    const { width, height } = rect;
    this.#open.push({ width, height, tree, value, counts, column, row }, -most);
    if (value > this.#floor()) this.#found(inCorner(tree(), sheet, longest));
  }

  #isKnown(counts: Uint16Array, { width, height }: Rect): boolean {
    const key = counts.join();
    const known = this.#known.get(key) ?? [];
    if (known.some((each) => each.width <= width && each.height <= height)) return true;
    this.#known.set(key, [...known, { width, height }]);
    return false;
  }

  /**
   * What the copies that are left could add to a block by their area alone, parts of a copy allowed: those worth most
   * for their area first (G. B. Dantzig, Operations Research 5, 1957). Rounded up, so that nothing is lost to floating
   * point.
   */
  #worthBeside(counts: Uint16Array, { width, height }: Rect): number {
    const { grid, demand } = this.#wanted;
    let room = grid.sheet.width * grid.sheet.height - width * height;
    let worth = 0;
    for (const { blank, value, area } of this.#densest) {
      const left = (demand[blank] ?? 0) - (counts[blank] ?? 0);
      if (left * area >= room) return worth + Math.ceil((room / area) * value + 1e-6);
      worth += left * value;
      room -= left * area;
    }
    return worth;
  }
}

/** The blanks that are worth anything, those worth most for their area first. */
function densestFirst({
  grid: { blanks },
  values,
}: Wanted): readonly { readonly blank: number; readonly value: number; readonly area: number }[] {
  return blanks
    .map(({ width, height }, blank) => ({ blank, value: values[blank] ?? 0, area: width * height }))
    .filter(({ value }) => value > 0)
    .sort((a, b) => b.value / b.area - a.value / a.area);
}
