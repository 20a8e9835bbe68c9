import { type Blank, stancesOn } from './blank.ts';
import { bestConstrained, goodConstrained, listConstrained } from './constrained.ts';
import type { Rect } from './cut-tree.ts';
import { type CutGrid, gridOf } from './grid.ts';
import { PatternTable } from './pattern-table.ts';
import type { CuttingProblem, Pattern, PricedSheet } from './problem.ts';

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
   * @param pairs how many pairs of blocks may be looked at where copies are short.
   */
  best(values: readonly number[], pairs: number): readonly Priced[] {
    const { demand } = this.#problem;
    return this.#grids.map((grids, sheet) => bestOn(grids, sheet, values, demand, pairs));
  }

  /** For each sheet size a good pattern, soon, with at most so many copies of each blank as are still wanted. */
  good(values: readonly number[], demand: readonly number[]): readonly Pattern[] {
    const wanted = values.map((value, blank) => ((demand[blank] ?? 0) > 0 ? value : 0));
    return this.#grids.map(({ grid }, sheet) => {
      const { tree, counts } = goodConstrained({ grid, values: wanted, demand });
      return { sheet, tree, counts };
    });
  }
  /** Every pattern of one sheet size that is worth at least this; undefined where there are too many. */
  all(sheet: number, values: readonly number[], least: number): readonly Pattern[] | undefined {
    const grid = this.#grids[sheet]?.grid;
    const { demand, safe } = this.#problem;
    const listed = grid && !safe ? listConstrained({ grid, values, demand }, least) : undefined;
    return listed?.map(({ tree, counts }) => ({ sheet, tree, counts }));
  }
}

/** `relaxed` is there where positions were left out of `grid`: blanks a little too small on a sheet too large. */
type SheetGrids = { readonly grid: CutGrid; readonly relaxed: CutGrid | 'unknown' | undefined };

function sheetGrids(
  { blanks, demand, longest, safe }: CuttingProblem,
  sheet: PricedSheet,
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
function relaxedGrid(blanks: readonly Blank[], sheet: Rect): CutGrid | 'unknown' {
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

function boundOn(relaxed: CutGrid | 'unknown', values: readonly number[]): number {
  return relaxed === 'unknown' ? Number.POSITIVE_INFINITY : new PatternTable(relaxed, values).value;
}

/** Whether a blank can be cut from a sheet by cuts no longer than this. */
export function canCutWithin(blank: Blank, sheet: Rect, longest: number): boolean {
  const isSmall = stancesOn(blank, sheet).length > 0;
  return isSmall && new PatternTable(gridOf([blank], sheet, { longest }), [1]).value > 0;
}
