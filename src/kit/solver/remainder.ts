import { along, type CutEdge, type CutTree, padded, sideBySide } from './cut-tree.ts';
import type { CutAxis, CutGrid } from './grid.ts';
import type { PatternTable } from './pattern-table.ts';

/** What comes next to a block; the number beside it is the position of what is added, 0 for waste. */
const RIGHT = 0;
const BELOW = 1;
const WAYS = 2;

/**
 * The most that what is left of a sheet can be worth when a block that reaches to given positions lies in its corner
 * and blocks are joined to it side by side (K. V. Viswanathan and A. Bagchi, Operations Research 41, 1993).
 */
export class Remainder {
  readonly #grid: CutGrid;
  readonly #table: PatternTable;
  readonly #rows: number;
  readonly #worth: Float64Array;
  readonly #ways: Int32Array;

  constructor(grid: CutGrid, table: PatternTable) {
    const columns = grid.across.at.length;
    this.#grid = grid;
    this.#table = table;
    this.#rows = grid.down.at.length;
    this.#worth = new Float64Array(columns * this.#rows);
    this.#ways = new Int32Array(columns * this.#rows);
    const across = reachesOf(grid.across);
    const down = reachesOf(grid.down);
    const none = new Int32Array();
    for (let column = columns - 1; column > 0; column -= 1)
      for (let row = this.#rows - 1; row > 0; row -= 1)
        this.#fill(column, row, across[column] ?? none, down[row] ?? none);
  }

  /** The worth of the rest beside a block that reaches to these positions. */
  at(column: number, row: number): number {
    return this.#worth[column * this.#rows + row] ?? 0;
  }

  /** The whole sheet with a block in its corner and the most worth beside it, copies not counted. */
  complete(block: CutTree, column: number, row: number): CutTree {
    const { across, down } = this.#grid;
    const last = { column: across.at.length - 1, row: this.#rows - 1 };
    if (column === last.column && row === last.row) return block;
    const note = this.#ways[column * this.#rows + row] ?? 0;
    const [way, added] = [note % WAYS, Math.floor(note / WAYS)];
    const sideways = way === RIGHT;
    const [axis, here] = sideways ? [across, column] : [down, row];
    const beside = sideways ? this.#table.treeAt(added, row) : this.#table.treeAt(column, added);
    const reached =
      added === 0 ? here + 1 : firstFrom(axis, (axis.at[here] ?? 0) + (axis.at[added] ?? 0), here);
    const from: CutEdge = sideways ? 'left' : 'top';
    const rest = (axis.at[reached] ?? 0) - along(block, from);
    const tree = sideBySide([block, padded(beside, from, rest)], from);
    return sideways ? this.complete(tree, reached, row) : this.complete(tree, column, reached);
  }

  /** Beside the block or under it comes another, or nothing at all up to the next position. */
  #fill(column: number, row: number, across: Int32Array, down: Int32Array): void {
    const worth = this.#worth;
    const rows = this.#rows;
    const cell = column * rows + row;
    let most = worth[cell + rows] ?? 0;
    let way = RIGHT;
    const below = row + 1 < rows ? (worth[cell + 1] ?? 0) : 0;
    if (below > most || column + 1 === this.#grid.across.at.length) {
      most = below;
      way = BELOW;
    }
    for (let added = 1; added < across.length; added += 1) {
      const total = this.#table.at(added, row) + (worth[(across[added] ?? 0) * rows + row] ?? 0);
      if (total > most) {
        most = total;
        way = RIGHT + WAYS * added;
      }
    }
    for (let added = 1; added < down.length; added += 1) {
      const total = this.#table.at(column, added) + (worth[column * rows + (down[added] ?? 0)] ?? 0);
      if (total > most) {
        most = total;
        way = BELOW + WAYS * added;
      }
    }
    worth[cell] = most;
    this.#ways[cell] = way;
  }
}

function firstFrom({ at }: CutAxis, length: number, start: number): number {
  let index = start;
  while ((at[index] ?? length) < length) index += 1;
  return index;
}

/** For each position and each that can be added to it: the first position that both together reach. */
function reachesOf({ at }: CutAxis): readonly Int32Array[] {
  const end = at.at(-1) ?? 0;
  return Array.from(at, (from, index) => {
    const reaches: number[] = [];
    let reached = index;
    for (const added of at) {
      if (from + added > end) break;
      while ((at[reached] ?? end) < from + added) reached += 1;
      reaches.push(reached);
    }
    return Int32Array.from(reaches);
  });
}
