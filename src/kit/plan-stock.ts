import type { CuttingBench } from './bench.ts';
import type { StockDemand } from './demand.ts';
import { namePieces } from './piece-names.ts';
import type { StockPlan } from './plan.ts';
import { type PosedProblem, poseProblem } from './pose-problem.ts';
import { layOutSheet, piecesIn } from './sheet-tree.ts';
import { areaCover, cheapestBasket } from './solver/bounds.ts';
import type { LinearSolver } from './solver/master.ts';
import { planSheets, type SheetPlan, type Standing } from './solver/plan-sheets.ts';
import { sheetsIn } from './solver/problem.ts';
import type { Work } from './solver/work.ts';
import { stepsOf } from './steps.ts';

/** What planning uses of the world. */
export type PlanTools = {
  readonly highs: LinearSolver;
  /** Seconds since some moment, rising: to tell how long a plan took. No plan depends on it. */
  readonly clock: () => number;
};

/** Plans how one stock is cut for all kits, with about so much work. */
export function planStock(
  demand: StockDemand,
  bench: CuttingBench,
  work: Work,
  tools: PlanTools,
  progress: (standing: Standing & { isPriced: boolean }) => void,
): StockPlan {
  const { stock, kinds } = demand;
  const start = tools.clock();
  const posed = poseProblem(demand, bench);
  const isPriced = posed.unit !== undefined;
  const plan = planSheets(posed.problem, {
    highs: tools.highs,
    work,
    progress: (standing) => progress({ ...standing, isPriced }),
  });
  const layouts = plan.batches.map(({ pattern, count }) => {
    const sheet = stock.sheets[pattern.sheet];
    if (!sheet) throw new Error('a pattern of no sheet size');
    const { width, height } = sheet.size;
    const size = { width: width.value, height: height.value };
    const tree = layOutSheet(size, pattern.tree, bench.trimMargin, posed.ruler);
    return { sheet, count, tree, steps: stepsOf(tree, bench.trimmer) };
  });
  const named = namePieces(
    layouts.map(({ count, tree }) => ({ count, pieces: piecesIn(tree) })),
    kinds,
  );
  return {
    stock,
    kinds,
    ...totalsOf(plan, posed),
    seconds: tools.clock() - start,
    layouts: layouts.map((layout, index) => ({ ...layout, named: named[index] ?? [] })),
  };
}

function totalsOf(
  { batches, cost, bound }: SheetPlan,
  { problem, unit }: PosedProblem,
): Pick<StockPlan, 'total' | 'bound' | 'proven' | 'price'> {
  const total = sheetsIn(batches);
  const proven = cost === bound;
  if (unit === undefined) return { total, bound, proven };
  const counted = problem.sheets.map(({ width, height }) => ({ width, height, cost: 1 }));
  const fewest = cheapestBasket([areaCover({ ...problem, sheets: counted })], counted).cost;
  const price = { total: { minor: BigInt(cost) * unit }, bound: { minor: BigInt(bound) * unit } };
  return { total, bound: fewest, proven, price };
}
