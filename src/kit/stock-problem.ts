import type { Size } from '../measure/size.ts';
import type { StockSheet } from '../project/model.ts';
import { type Bench, usableSize } from './bench.ts';
import type { StockDemand } from './demand.ts';
import { type Blank, stancesOf } from './guillotine/blank.ts';
import { gridOf } from './guillotine/grid.ts';
import { PatternTable } from './guillotine/pattern-table.ts';
import { Ruler } from './ruler.ts';
import type { CuttingProblem, SheetSize } from './stock/problem.ts';

/** A stock's cutting as whole numbers, and the ruler that turns them into lengths again. */
export type Posed = {
  readonly problem: CuttingProblem;
  readonly ruler: Ruler;
  /** The sheets' costs are prices, in the currency's smallest unit. */
  readonly isPriced: boolean;
};

export function poseProblem({ stock, turnable, kinds }: StockDemand, kits: number, bench: Bench): Posed {
  const usable = stock.sheets.map((sheet) => usableSize(sheet, bench));
  const lengths = [...usable, ...kinds.map(({ size }) => size)].flatMap(({ width, height }) => [
    width,
    height,
  ]);
  const ruler = Ruler.for(
    lengths.filter((length) => length.sign > 0),
    bench.kerf,
  );
  const isPriced = hasPrices(stock.sheets);
  const problem: CuttingProblem = {
    blanks: kinds.map(({ size }) => ({ ...inSteps(size, ruler, 'up'), turnable })),
    demand: kinds.map(({ pieces }) => pieces.reduce((sum, { perKit }) => sum + perKit * kits, 0)),
    sheets: usable.map((size, index) => ({
      ...inSteps(size, ruler, 'down'),
      cost: isPriced ? Number(stock.sheets[index]?.price?.value.minor ?? 1n) : 1,
    })),
    ...(ruler.exact ? {} : { safe: safeSizes(usable, kinds, ruler) }),
  };
  return { problem: withLongest(problem, ruler, bench), ruler, isPriced };
}

/** Several sizes are weighed by their prices if every one has a price. */
function hasPrices(sheets: readonly StockSheet[]): boolean {
  return sheets.length > 1 && sheets.every(({ price }) => price !== undefined && price.value.minor > 0n);
}

function inSteps(
  { width, height }: Size,
  ruler: Ruler,
  rounding: 'up' | 'down',
): { width: number; height: number } {
  return { width: ruler.steps(width, rounding), height: ruler.steps(height, rounding) };
}

/** Sizes rounded the other way, for bounds: pieces too small on sheets too large. */
function safeSizes(
  usable: readonly Size[],
  kinds: StockDemand['kinds'],
  ruler: Ruler,
): CuttingProblem['safe'] & object {
  return {
    blanks: kinds.map(({ size }) => inSteps(size, ruler, 'down')),
    sheets: usable.map((size) => inSteps(size, ruler, 'up')),
  };
}

/**
 * The trimmer's longest cut limits the plan where every piece can be cut within it. Where one cannot, the plan is made
 * without the limit, and its steps say which cuts are too long.
 */
function withLongest(problem: CuttingProblem, ruler: Ruler, { trimmer }: Bench): CuttingProblem {
  const longest = ruler.steps(trimmer, 'down');
  const { blanks, sheets } = problem;
  if (sheets.every(({ width, height }) => width <= longest && height <= longest)) return problem;
  const can = blanks.every((blank) => sheets.some((sheet) => canCut(blank, sheet, longest)));
  return can ? { ...problem, longest } : problem;
}

function canCut(blank: Blank, sheet: SheetSize, longest: number): boolean {
  const fits = stancesOf(blank).some(({ width, height }) => width <= sheet.width && height <= sheet.height);
  return fits && new PatternTable(gridOf([blank], sheet, { longest }), [1]).value > 0;
}
