import type { Blank, Rect } from '../guillotine/blank.ts';
import { bestConstrained, goodConstrained, type Wanted } from '../guillotine/constrained.ts';
import { type Grid, gridOf } from '../guillotine/grid.ts';
import { PatternTable } from '../guillotine/pattern-table.ts';
import type { CuttingProblem, Pattern, SheetSize } from './problem.ts';

/** The best pattern of one sheet size for given values, and what no pattern of it can pass. */
export type Priced = { readonly pattern: Pattern; readonly value: number; readonly bound: number };

/**
 * Finds patterns of the greatest value, each blank at most as often as it is wanted. The positions where a sheet may
 * be cut are found once; values change from call to call.
 */
export class Pricer {
  readonly #problem: CuttingProblem;
  readonly #grids: readonly SheetGrids[];

  constructor(problem: CuttingProblem) {
    this.#problem = problem;
    this.#grids = problem.sheets.map((sheet, index) => sheetGrids(problem, sheet, index));
  }

  /**
   * For each sheet size the best pattern found.
   * @param demand at most so many of each; may be less than the problem's.
   * @param pairs how many pairs of blocks may be looked at where copies are short.
   */
  best(values: readonly number[], demand: readonly number[], pairs: number): readonly Priced[] {
    const wanted = values.map((value, blank) => ((demand[blank] ?? 0) > 0 ? value : 0));
    return this.#grids.map((grids, sheet) => bestOn(grids, sheet, wanted, demand, pairs));
  }

  /** For each sheet size a good pattern, soon. */
  good(values: readonly number[], demand: readonly number[]): readonly Pattern[] {
    const wanted = values.map((value, blank) => ((demand[blank] ?? 0) > 0 ? value : 0));
    return this.#grids.map(({ grid }, sheet) => {
      const { tree, counts } = goodConstrained({ grid, values: wanted, demand });
      return { sheet, tree, counts };
    });
  }

  /** All patterns of one sheet size, to be searched for the problem's own demand. */
  wantedOn(sheet: number, values: readonly number[]): Wanted {
    const grid = this.#grids[sheet]?.grid;
    if (!grid) throw new Error(`there is no sheet size ${sheet}`);
    return { grid, values, demand: this.#problem.demand };
  }
}

/** `relaxed` is there where positions were left out of `grid`: blanks a little too small on a sheet too large. */
type SheetGrids = { readonly grid: Grid; readonly relaxed: Grid | 'unknown' | undefined };

function sheetGrids(
  { blanks, demand, longest, safe }: CuttingProblem,
  sheet: SheetSize,
  index: number,
): SheetGrids {
  const grid = gridOf(blanks, sheet, { demand, ...(longest === undefined ? {} : { longest }) });
  if (grid.exact && !safe) return { grid, relaxed: undefined };
  const smaller = blanks.map((blank, each) => ({ ...blank, ...safe?.blanks[each] }));
  return { grid, relaxed: relaxedGrid(smaller, safe?.sheets[index] ?? sheet) };
}

/** Steps along the longer edge of a relaxed sheet; few enough for every position to be there. */
const RELAXED_STEPS = 400;

/** @returns `unknown` when a blank is so small that it would vanish. */
function relaxedGrid(blanks: readonly Blank[], sheet: Rect): Grid | 'unknown' {
  const step = Math.ceil(Math.max(sheet.width, sheet.height) / RELAXED_STEPS);
  const smaller = blanks.map(({ width, height, turnable }) => ({
    width: Math.floor(width / step),
    height: Math.floor(height / step),
    turnable,
  }));
  if (smaller.some(({ width, height }) => width === 0 || height === 0)) return 'unknown';
  return gridOf(smaller, { width: Math.ceil(sheet.width / step), height: Math.ceil(sheet.height / step) });
}

function bestOn(
  { grid, relaxed }: SheetGrids,
  sheet: number,
  values: readonly number[],
  demand: readonly number[],
  pairs: number,
): Priced {
  const { tree, counts, value, bound } = bestConstrained({ grid, values, demand }, pairs);
  const ceiling = relaxed === undefined ? bound : boundOn(relaxed, values);
  return { pattern: { sheet, tree, counts }, value, bound: ceiling };
}

function boundOn(relaxed: Grid | 'unknown', values: readonly number[]): number {
  return relaxed === 'unknown' ? Number.POSITIVE_INFINITY : new PatternTable(relaxed, values).value;
}
