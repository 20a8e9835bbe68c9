import { along, type CutTree, padded, sideBySide, waste } from './cut-tree.ts';
import type { CutAxis, CutGrid } from './grid.ts';

/** How the best value of a part comes about; the number beside it is a stance, or the position of a cut. */
const NOTHING = 0;
const STANCE = 1;
const CUT_FROM_LEFT = 2;
const CUT_FROM_TOP = 3;
const WAYS = 4;

/**
 * The best value that can be cut from every part of a sheet, any number of each blank allowed: dynamic programming
 * over the positions of a grid (P. C. Gilmore and R. E. Gomory, Operations Research 14, 1966; with normal patterns
 * J. E. Beasley, J. Opl Res. Soc. 36, 1985). Exact on the grid: values are whole numbers and are only added.
 */
export class PatternTable {
  readonly #grid: CutGrid;
  readonly #rows: number;
  readonly #best: Float64Array;
  readonly #ways: Int32Array;

  /** @param values what each blank is worth: whole numbers, not negative. */
  constructor(grid: CutGrid, values: readonly number[]) {
    const cells = grid.across.at.length * grid.down.at.length;
    this.#grid = grid;
    this.#rows = grid.down.at.length;
    this.#best = new Float64Array(cells);
    this.#ways = new Int32Array(cells);
    this.#layBlanks(values);
    for (let column = 1; column < grid.across.at.length; column += 1) this.#fillColumn(column);
  }

  /** The best value of the whole sheet. */
  get value(): number {
    return this.#best.at(-1) ?? 0;
  }

  /** The best value of the part that reaches to these positions. */
  at(column: number, row: number): number {
    return this.#best[column * this.#rows + row] ?? 0;
  }

  /** How the whole sheet is cut for its best value. */
  tree(): CutTree {
    return this.treeAt(this.#grid.across.at.length - 1, this.#rows - 1);
  }

  /** How the part that reaches to these positions is cut for its best value. */
  treeAt(column: number, row: number): CutTree {
    const { across, down, stances } = this.#grid;
    const room = { width: across.at[column] ?? 0, height: down.at[row] ?? 0 };
    const note = this.#ways[column * this.#rows + row] ?? NOTHING;
    const [way, index] = [note % WAYS, Math.floor(note / WAYS)];
    if (way === NOTHING) return waste(room);
    if (way === STANCE) {
      const { blank, turned } = stances[index] ?? { blank: 0, turned: false };
      return { ...room, kind: 'blank', blank, turned };
    }
    const isLeft = way === CUT_FROM_LEFT;
    const from = isLeft ? 'left' : 'top';
    const part = (to: number): CutTree => (isLeft ? this.treeAt(to, row) : this.treeAt(column, to));
    const near = part(index);
    // A cut past half way trims off what is too small for anything.
    const far = part((isLeft ? across.beyond[column] : down.beyond[row])?.[index] ?? 0);
    return sideBySide([near, padded(far, from, along(room, from) - along(near, from))], from);
  }

  #layBlanks(values: readonly number[]): void {
    for (const [index, { blank, across, down }] of this.#grid.stances.entries()) {
      const cell = across * this.#rows + down;
      const value = values[blank] ?? 0;
      if (value > (this.#best[cell] ?? 0)) this.#note(cell, value, STANCE, index);
    }
  }

  #note(cell: number, value: number, way: number, index: number): void {
    this.#best[cell] = value;
    this.#ways[cell] = way + WAYS * index;
  }

  /** Everything that is cut from top to bottom needs only columns to the left; then each from the top down. */
  #fillColumn(column: number): void {
    const { across, down, longest } = this.#grid;
    const rows = countUpTo(down, longest);
    // What is too small for anything is trimmed off.
    this.#cutColumn(column, column - 1, 0, rows);
    const beyond = across.beyond[column] ?? new Int32Array();
    for (let cut = 1; cut < beyond.length; cut += 1) this.#cutColumn(column, cut, beyond[cut] ?? 0, rows);
    if ((across.at[column] ?? 0) > longest) return;
    for (let row = 1; row < this.#rows; row += 1) this.#cutFromTop(column, row);
  }

  #cutColumn(column: number, cut: number, beyond: number, rows: number): void {
    const [best, here] = [this.#best, column * this.#rows];
    const [near, far] = [cut * this.#rows, beyond * this.#rows];
    for (let row = 1; row < rows; row += 1) {
      const value = (best[near + row] ?? 0) + (best[far + row] ?? 0);
      if (value > (best[here + row] ?? 0)) this.#note(here + row, value, CUT_FROM_LEFT, cut);
    }
  }

  #cutFromTop(column: number, row: number): void {
    const [best, first] = [this.#best, column * this.#rows];
    const cell = first + row;
    const beyond = this.#grid.down.beyond[row] ?? new Int32Array();
    const attempt = (cut: number, rest: number): void => {
      const value = (best[first + cut] ?? 0) + (best[first + rest] ?? 0);
      if (value > (best[cell] ?? 0)) this.#note(cell, value, CUT_FROM_TOP, cut);
    };
    attempt(row - 1, 0);
    for (let cut = 1; cut < beyond.length; cut += 1) attempt(cut, beyond[cut] ?? 0);
  }
}

/** How many positions are at most `longest`. */
function countUpTo({ at }: CutAxis, longest: number): number {
  const beyond = at.findIndex((position) => position > longest);
  return beyond < 0 ? at.length : beyond;
}
