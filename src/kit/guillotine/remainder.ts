import type { Axis, Grid } from './grid.ts';
import type { PatternTable } from './pattern-table.ts';

/**
 * The most that what is left of a sheet can be worth when a block that reaches to given positions lies in its corner
 * and blocks are joined to it side by side (K. V. Viswanathan and A. Bagchi, Operations Research 41, 1993).
 */
export class Remainder {
  readonly #rows: number;
  readonly #worth: Float64Array;

  constructor(grid: Grid, table: PatternTable) {
    const columns = grid.across.at.length;
    this.#rows = grid.down.at.length;
    this.#worth = new Float64Array(columns * this.#rows);
    const [across, down] = [sumsOf(grid.across), sumsOf(grid.down)];
    for (let column = columns - 1; column > 0; column -= 1)
      for (let row = this.#rows - 1; row > 0; row -= 1) this.#fill(column, row, across, down, table);
  }

  /** The worth of the rest beside a block that reaches to these positions. */
  at(column: number, row: number): number {
    return this.#worth[column * this.#rows + row] ?? 0;
  }

  /** Beside the block or under it comes another, or nothing at all up to the next position. */
  #fill(column: number, row: number, across: Sums, down: Sums, table: PatternTable): void {
    let most = Math.max(this.at(column + 1, row), row + 1 < this.#rows ? this.at(column, row + 1) : 0);
    for (const [added, reached] of across[column] ?? []) {
      const worth = table.at(added, row) + this.at(reached, row);
      if (worth > most) most = worth;
    }
    for (const [added, reached] of down[row] ?? []) {
      const worth = table.at(column, added) + this.at(column, reached);
      if (worth > most) most = worth;
    }
    this.#worth[column * this.#rows + row] = most;
  }
}

/** For each position those that can be added to it, and the first one that both together reach. */
type Sums = readonly (readonly (readonly [added: number, reached: number])[])[];

function sumsOf({ at }: Axis): Sums {
  const end = at.at(-1) ?? 0;
  return Array.from(at, (from, index) => {
    const sums: (readonly [number, number])[] = [];
    let reached = index;
    for (let added = 1; added < at.length; added += 1) {
      const sum = from + (at[added] ?? 0);
      if (sum > end) break;
      while ((at[reached] ?? end) < sum) reached += 1;
      sums.push([added, reached]);
    }
    return sums;
  });
}
