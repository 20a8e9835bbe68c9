import { Length } from '../measure/length.ts';
import type { Highs } from '../shape/highs.ts';
import type { Bench } from './bench.ts';
import type { StockDemand } from './demand.ts';
import { type Laid, layOut, trimEdges } from './layout/lay-out.ts';
import { namingsOf } from './layout/namings.ts';
import { cuttingOf } from './layout/steps.ts';
import { stripsOf } from './layout/strips.ts';
import type { Box, Layout, Placement, StockPlan } from './plan.ts';
import { areaBound } from './stock/bounds.ts';
import { planSheets, type SheetPlan } from './stock/plan-sheets.ts';
import { type CuttingProblem, sheetsIn, type Use } from './stock/problem.ts';
import { type Posed, poseProblem } from './stock-problem.ts';

/** What a search may use of the world. */
export type SearchTools = {
  readonly highs: Highs;
  /** Seconds since some moment, rising. */
  readonly clock: () => number;
};

/** Where a search stands: sheets of the best plan so far, or their cost where sizes have prices, and the bound. */
export type Stand = { readonly cost: number; readonly bound: number; readonly isPriced: boolean };

/** Plans how one stock is cut for so many kits, in at most about so many seconds. */
export function planStock(
  demand: StockDemand,
  kits: number,
  bench: Bench,
  seconds: number,
  { highs, clock }: SearchTools,
  progress: (stand: Stand) => void,
): StockPlan {
  const start = clock();
  const posed = poseProblem(demand, kits, bench);
  const plan = planSheets(posed.problem, {
    highs,
    clock,
    until: start + seconds,
    progress: (stand) => progress({ ...stand, isPriced: posed.isPriced }),
  });
  const layouts = plan.uses.map((use) => layoutOf(use, demand, posed, bench));
  const named = namingsOf(layouts, demand.kinds, kits);
  return {
    stock: demand.stock,
    kinds: demand.kinds,
    ...standing(plan, posed),
    seconds: clock() - start,
    layouts: layouts.map((layout, index) => ({ ...layout, namings: named[index] ?? [] })),
  };
}

function standing(
  { uses, cost, bound }: SheetPlan,
  { problem, isPriced }: Posed,
): Pick<StockPlan, 'total' | 'bound' | 'proven' | 'price'> {
  const total = sheetsIn(uses);
  const proven = cost === bound;
  if (!isPriced) return { total, bound, proven };
  const counted: CuttingProblem = {
    ...problem,
    sheets: problem.sheets.map((sheet) => ({ ...sheet, cost: 1 })),
  };
  const price = { total: { minor: BigInt(cost) }, bound: { minor: BigInt(bound) } };
  return { total, bound: areaBound(counted), proven, price };
}

type Unnamed = Omit<Layout, 'namings'>;

function layoutOf(
  { pattern, count }: Use,
  { stock }: StockDemand,
  { problem, ruler }: Posed,
  bench: Bench,
): Unnamed {
  const sheet = stock.sheets[pattern.sheet];
  const inSteps = problem.sheets[pattern.sheet];
  if (!sheet || !inSteps) throw new Error('a pattern of no sheet size');
  const size = { width: sheet.size.width.value, height: sheet.size.height.value };
  const part = stripsOf(pattern.tree, inSteps, problem.longest);
  const whole: Box = { left: Length.zero, top: Length.zero, ...size };
  const laid = trimEdges(whole, bench.trimMargin, bench.kerf, (box) => layOut(part, box, ruler));
  return {
    sheet,
    size,
    count,
    placements: placementsIn(laid),
    ...cuttingOf(laid, bench.trimmer),
    offcuts: wasteIn(laid).filter(isWorthKeeping),
  };
}

function placementsIn({ box, content }: Laid): readonly Placement[] {
  if (content.kind === 'piece') return [{ ...box, kind: content.blank, turned: content.turned }];
  return content.kind === 'strips' ? content.parts.flatMap(placementsIn) : [];
}

function wasteIn({ box, content }: Laid): readonly Box[] {
  if (content.kind === 'waste') return [box];
  return content.kind === 'strips' ? content.parts.flatMap(wasteIn) : [];
}

/** Off-cuts of at least this much both ways are put aside; common practice, no source. */
const WORTH_KEEPING: Length = Length.of(2, 1, 'in');

function isWorthKeeping({ width, height }: Box): boolean {
  return !width.lessThan(WORTH_KEEPING) && !height.lessThan(WORTH_KEEPING);
}
