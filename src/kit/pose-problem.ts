import type { Length } from '../measure/length.ts';
import { gcd } from '../measure/numbers.ts';
import type { Size } from '../measure/size.ts';
import type { StockSheet } from '../project/stock.ts';
import { type CuttingBench, usableSize } from './bench.ts';
import type { StockDemand } from './demand.ts';
import { Ruler } from './ruler.ts';
import { type Blank, type Rect, stancesOn } from './solver/cut-tree.ts';
import type { CuttingProblem, SheetSource } from './solver/problem.ts';

/** A stock's cutting as whole numbers, and the ruler that turns them into lengths again. */
export type PosedProblem = {
  readonly problem: CuttingProblem;
  readonly ruler: Ruler;
  /** What a cost of 1 is in the currency's smallest unit, where the sheets' costs are prices. */
  readonly unit: bigint | undefined;
};

export function poseProblem({ stock, turnable, kinds }: StockDemand, bench: CuttingBench): PosedProblem {
  const usable = stock.sheets.map((sheet) => usableSize(sheet, bench));
  const sizes = kinds.map(({ size }) => size);
  const lengths = [...usable, ...sizes].flatMap(({ width, height }) => [width, height]);
  const ruler = Ruler.for(
    lengths.filter((length) => length.sign > 0),
    bench.kerf,
  );
  const { buying, unit } = buyingOf(stock.sheets);
  const problem: CuttingProblem = {
    blanks: sizes.map((size) => ({ ...upToFit(size, usable, ruler), turnable })),
    demand: kinds.map(({ pieces }) => pieces.reduce((sum, { perKit, kits }) => sum + perKit * kits, 0)),
    sheets: usable.map((size, index) => ({
      ...inSteps(size, ruler, 'down'),
      cost: 1,
      ...buying[index],
    })),
    // Rounded the other way, for bounds: pieces too small on sheets too large.
    ...(!ruler.exact && {
      safe: {
        blanks: sizes.map((size) => inSteps(size, ruler, 'down')),
        sheets: usable.map((size) => inSteps(size, ruler, 'up')),
      },
    }),
  };
  return { problem: withLongest(problem, ruler.steps(bench.trimmer, 'down')), ruler, unit };
}

/** How the sheets of a stock are had, and what a cost of 1 is where it is money. */
type Buying = {
  readonly buying: readonly Omit<SheetSource, keyof Rect>[];
  readonly unit: bigint | undefined;
};

/**
 * Several sizes are weighed by what their packs cost if every one has a price; otherwise sheets are counted. Of one size
 * the fewest sheets are always the cheapest.
 */
function buyingOf(sheets: readonly StockSheet[]): Buying {
  const prices = sheets.map(({ price }) => price?.value.minor ?? 0n);
  if (sheets.length === 1 || prices.some((price) => price <= 0n))
    return { buying: sheets.map(() => ({ cost: 1 })), unit: undefined };
  const packs = sheets.map(({ pack }) => pack?.value ?? 1);
  const costs = prices.map((price, index) => price * BigInt(packs[index] ?? 1));
  const unit = costs.reduce(gcd, 0n);
  const part = prices.reduce(gcd, 0n);
  return {
    unit,
    buying: sheets.map((_, index) => ({
      cost: Number((costs[index] ?? unit) / unit),
      pack: packs[index] ?? 1,
      there: sheets[index]?.onHand?.value ?? 0,
      use: Number((prices[index] ?? part) / part),
    })),
  };
}

function inSteps({ width, height }: Size, ruler: Ruler, rounding: 'up' | 'down'): Rect {
  return { width: ruler.steps(width, rounding), height: ruler.steps(height, rounding) };
}

/** Rounded up, but not beyond a sheet's edge that it reaches at most. */
function upToFit({ width, height }: Size, sheets: readonly Size[], ruler: Ruler): Rect {
  const edges = sheets.flatMap((sheet) => [sheet.width, sheet.height]);
  const steps = (length: Length): number => {
    const reached = edges.filter((edge) => !edge.lessThan(length)).map((edge) => ruler.steps(edge, 'down'));
    return Math.min(ruler.steps(length, 'up'), ...reached);
  };
  return { width: steps(width), height: steps(height) };
}

/**
 * The trimmer's longest cut limits the plan where every piece can be cut within it. Where one cannot, the plan is made
 * without the limit, and its steps say which cuts are too long.
 */
function withLongest(problem: CuttingProblem, longest: number): CuttingProblem {
  const { blanks, sheets } = problem;
  if (sheets.every(({ width, height }) => width <= longest && height <= longest)) return problem;
  const canCut = blanks.every((blank) => sheets.some((sheet) => canCutWithin(blank, sheet, longest)));
  return canCut ? { ...problem, longest } : problem;
}

/** Whether cuts no longer than this cut a blank from a sheet: first to its width and then to its height, or the other way. */
function canCutWithin(blank: Blank, sheet: Rect, longest: number): boolean {
  return stancesOn(blank, sheet).some(
    ({ width, height }) =>
      ((width === sheet.width || sheet.height <= longest) && (height === sheet.height || width <= longest)) ||
      ((height === sheet.height || sheet.width <= longest) && (width === sheet.width || height <= longest)),
  );
}
