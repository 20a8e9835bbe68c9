import { along, type CutEdge, type CutTree, padded, sideBySide, waste } from './cut-tree.ts';
import type { CutGrid } from './grid.ts';

const NONE = new Int32Array();

/** How many of each blank there are. */
type Counts = readonly number[];

function sumOf(one: Counts, other: Counts): Counts {
  return one.map((count, blank) => count + (other[blank] ?? 0));
}

/** A number for every pair of positions of a grid, 0 at first. */
class Cells {
  readonly rows: number;
  readonly numbers: Float64Array;

  constructor({ across, down }: CutGrid) {
    this.rows = down.at.length;
    this.numbers = new Float64Array(across.at.length * this.rows);
  }

  at(column: number, row: number): number {
    return this.numbers[column * this.rows + row] ?? 0;
  }

  raise(column: number, row: number, value: number): void {
    if (value > this.at(column, row)) this.numbers[column * this.rows + row] = value;
  }
}

/** A part cut in two at a position, and the position that what lies beyond the cut reaches to. */
type Halves = { readonly from: CutEdge; readonly near: number; readonly far: number; readonly value: number };

/**
 * The best value that can be cut from every part of a sheet, any number of each blank allowed: dynamic programming
 * over the positions of a grid (P. C. Gilmore and R. E. Gomory, Operations Research 14, 1966; with normal patterns
 * J. E. Beasley, J. Opl Res. Soc. 36, 1985). Exact on the grid: values are whole numbers and are only added.
 */
export class PatternTable {
  readonly #grid: CutGrid;
  readonly #values: readonly number[];
  readonly #best: Cells;
  readonly #counts = new Map<number, Counts>();

  /** @param values what each blank is worth: whole numbers, not negative. */
  constructor(grid: CutGrid, values: readonly number[]) {
    const { across, down, stances } = grid;
    this.#grid = grid;
    this.#values = values;
    this.#best = new Cells(grid);
    for (const { blank, ...cell } of stances) this.#best.raise(cell.across, cell.down, values[blank] ?? 0);
    for (let column = 1; column < across.at.length; column += 1)
      for (let row = 1; row < down.at.length; row += 1)
        this.#best.raise(column, row, this.#bestHalves(column, row).value);
  }

  /** The best value of the whole sheet. */
  get value(): number {
    return this.#best.numbers.at(-1) ?? 0;
  }

  /** The best value of the part that reaches to these positions. */
  at(column: number, row: number): number {
    return this.#best.at(column, row);
  }

  /** How the whole sheet is cut for its best value. */
  tree(): CutTree {
    return this.treeAt(this.#grid.across.at.length - 1, this.#grid.down.at.length - 1);
  }

  /** How the part that reaches to these positions is cut for its best value. */
  treeAt(column: number, row: number): CutTree {
    const { across, down } = this.#grid;
    const room = { width: across.at[column] ?? 0, height: down.at[row] ?? 0 };
    if (this.at(column, row) === 0) return waste(room);
    const stance = this.#stanceAt(column, row);
    if (stance) return { ...room, kind: 'blank', blank: stance.blank, turned: stance.turned };
    const { from, near, far } = this.#bestHalves(column, row);
    const part = (to: number): CutTree => (from === 'left' ? this.treeAt(to, row) : this.treeAt(column, to));
    const one = part(near);
    return sideBySide([one, padded(part(far), from, along(room, from) - along(one, from))], from);
  }

  /** How many of each blank that gives; worked out once. */
  countsAt(column: number, row: number): Counts {
    const key = column * this.#best.rows + row;
    const counts = this.#counts.get(key) ?? this.#count(column, row);
    this.#counts.set(key, counts);
    return counts;
  }

  #count(column: number, row: number): Counts {
    const stance = this.at(column, row) === 0 ? undefined : this.#stanceAt(column, row);
    if (stance || this.at(column, row) === 0)
      return this.#values.map((_, blank) => (blank === stance?.blank ? 1 : 0));
    const { from, near, far } = this.#bestHalves(column, row);
    return from === 'left'
      ? sumOf(this.countsAt(near, row), this.countsAt(far, row))
      : sumOf(this.countsAt(column, near), this.countsAt(column, far));
  }

  /** The blank that fills a part and is the best that can be cut from it, if one is. */
  #stanceAt(column: number, row: number): CutGrid['stances'][number] | undefined {
    const value = this.at(column, row);
    return this.#grid.stances.find(
      ({ across, down, blank }) => across === column && down === row && this.#values[blank] === value,
    );
  }

  /** The best cut of a part; none, worth nothing, where every cut would be too long. */
  #bestHalves(column: number, row: number): Halves {
    const { across, down, longest } = this.#grid;
    const { rows } = this.#best;
    const isNarrow = (across.at[column] ?? 0) <= longest;
    const isLow = (down.at[row] ?? 0) <= longest;
    const left = this.#bestAlong('left', isLow ? across.beyond[column] : undefined, row, rows);
    const top = this.#bestAlong('top', isNarrow ? down.beyond[row] : undefined, column * rows, 1);
    return top.value > left.value ? top : left;
  }

  /** The best cut from one edge: the first of several, before all the one that trims off what is too small. */
  #bestAlong(from: CutEdge, beyond: Int32Array | undefined, first: number, stride: number): Halves {
    if (!beyond) return { from, near: 0, far: 0, value: 0 };
    const { numbers } = this.#best;
    const worth = (cut: number): number =>
      (numbers[first + cut * stride] ?? 0) + (numbers[first + (beyond[cut] ?? 0) * stride] ?? 0);
    let near = beyond.length - 2;
    let value = near > 0 ? worth(near) : 0;
    for (let cut = 1; cut <= (beyond[cut] ?? 0); cut += 1) {
      const both = worth(cut);
      if (both > value) [near, value] = [cut, both];
    }
    return { from, near, far: beyond[near] ?? 0, value };
  }
}

/** A part of the sheet beside a block or under it, by the positions of its size, and what both then reach to. */
type PartBeside = { readonly from: CutEdge; readonly to: number; readonly part: readonly [number, number] };

function reached({ from, to }: PartBeside, column: number, row: number): [number, number] {
  return from === 'left' ? [to, row] : [column, to];
}

/**
 * The most that what is left of a sheet can be worth when a block that reaches to given positions lies in its corner
 * and blocks are joined to it side by side (K. V. Viswanathan and A. Bagchi, Operations Research 41, 1993).
 */
export class Remainder {
  readonly #grid: CutGrid;
  readonly #table: PatternTable;
  readonly #worth: Cells;
  readonly #counts = new Map<number, Counts>();

  constructor(grid: CutGrid, table: PatternTable) {
    const { across, down } = grid;
    this.#grid = grid;
    this.#table = table;
    this.#worth = new Cells(grid);
    for (let column = across.at.length - 1; column > 0; column -= 1)
      for (let row = down.at.length - 1; row > 0; row -= 1)
        this.#lead(column, row, across.beyond[column] ?? NONE, down.beyond[row] ?? NONE);
  }

  /** The worth of the rest beside a block that reaches to these positions. */
  at(column: number, row: number): number {
    return this.#worth.at(column, row);
  }

  /** The whole sheet with a block in its corner and the most worth beside it, copies not counted. */
  complete(block: CutTree, column: number, row: number): CutTree {
    const step = this.#stepFrom(column, row);
    if (!step) return block;
    const { from, to, part } = step;
    const { across, down } = this.#grid;
    const reach = (from === 'left' ? across : down).at[to] ?? 0;
    const beside = padded(this.#table.treeAt(...part), from, reach - along(block, from));
    return this.complete(sideBySide([block, beside], from), ...reached(step, column, row));
  }

  /** How many of each blank are then beside the block; worked out once. */
  countsBeside(column: number, row: number): Counts {
    const key = column * this.#worth.rows + row;
    const counts = this.#counts.get(key) ?? this.#count(column, row);
    this.#counts.set(key, counts);
    return counts;
  }

  #count(column: number, row: number): Counts {
    const step = this.#stepFrom(column, row);
    if (!step) return this.#table.countsAt(0, 0);
    return sumOf(this.#table.countsAt(...step.part), this.countsBeside(...reached(step, column, row)));
  }

  /** What lies next to a block that reaches to these positions; nothing where nothing is worth anything there. */
  #stepFrom(column: number, row: number): PartBeside | undefined {
    const { across, down } = this.#grid;
    const worth = this.at(column, row);
    for (let to = across.at.length - 1; to > column; to -= 1) {
      const part = [across.beyond[to]?.[column] ?? 0, row] as const;
      if (this.#table.at(...part) + this.at(to, row) >= worth) return { from: 'left', to, part };
    }
    for (let to = down.at.length - 1; to > row; to -= 1) {
      const part = [column, down.beyond[to]?.[row] ?? 0] as const;
      if (this.#table.at(...part) + this.at(column, to) >= worth) return { from: 'top', to, part };
    }
    return undefined;
  }

  /** What blocks that reach less far gain when something beside them or under them brings them to these positions. */
  #lead(column: number, row: number, across: Int32Array, down: Int32Array): void {
    const here = this.at(column, row);
    for (let from = 1; from < column; from += 1)
      this.#worth.raise(from, row, here + this.#table.at(across[from] ?? 0, row));
    for (let from = 1; from < row; from += 1)
      this.#worth.raise(column, from, here + this.#table.at(column, down[from] ?? 0));
  }
}
