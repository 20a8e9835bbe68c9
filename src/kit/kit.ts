import type Fraction from 'fraction.js';
import type { Finding } from '../project/finding.ts';
import type { Project } from '../project/model.ts';
import type { Shapes } from '../shape/shapes.ts';
import type { Bench } from './bench.ts';
import { demandOf, type StockDemand } from './demand.ts';
import type { StockPlan } from './plan.ts';
import { planStock, type SearchTools, type Stand } from './plan-stock.ts';
import { type Cost, costOf } from './shopping/cost.ts';
import type { Line } from './shopping/line.ts';
import { shoppingList } from './shopping/list.ts';
import { type Weight, weightOf } from './shopping/weight.ts';

/** For whom a kit is made. */
export type KitOrder = {
  /** At least 1. */
  readonly attendees: number;
  /** Kits more than attendees. */
  readonly spares: number;
  /** Percent of the price that is to be left: 0 to less than 100. */
  readonly margin?: Fraction;
  readonly bench: Bench;
  /** For all stocks together, about. */
  readonly seconds: number;
};

/** Everything for one session: what to cut, what to buy, what it costs. */
export type Kit = {
  readonly project: Project;
  readonly attendees: number;
  readonly spares: number;
  readonly bench: Bench;
  readonly stocks: readonly StockPlan[];
  readonly shopping: readonly Line[];
  readonly cost: Cost;
  readonly weight: Weight;
};

/** A plan, or everything that stands in its way. */
export type KitResult = { readonly kit: Kit } | { readonly findings: readonly Finding[] };

/** Told of each better plan of a stock, by its name. */
export type KitProgress = (stock: string, stand: Stand) => void;

/** Plans a class kit. What cannot be planned is told, not thrown. */
export function planKit(
  project: Project,
  shapes: Shapes,
  order: KitOrder,
  tools: SearchTools,
  progress: KitProgress = () => {},
): KitResult {
  const { attendees, spares, margin, bench } = order;
  const kits = attendees + spares;
  const { stocks: demands, findings } = demandOf(project, shapes, bench);
  if (findings.length > 0) return { findings };
  const stocks = planStocks(demands, kits, order, tools, progress);
  const shopping = shoppingList(project, stocks, { attendees, kits });
  return {
    kit: {
      project,
      attendees,
      spares,
      bench,
      stocks,
      shopping,
      cost: costOf(shopping, attendees, margin),
      weight: weightOf(demands),
    },
  };
}

/** The easiest first, so that the time they leave goes to the others; in the order given. */
function planStocks(
  demands: readonly StockDemand[],
  kits: number,
  { bench, seconds }: KitOrder,
  tools: SearchTools,
  progress: KitProgress,
): readonly StockPlan[] {
  const end = tools.clock() + seconds;
  const ease = ({ kinds, stock }: StockDemand): number => kinds.length * stock.sheets.length;
  const waiting = demands.toSorted((a, b) => ease(a) - ease(b));
  const plans = new Map<StockDemand, StockPlan>();
  for (const [index, demand] of waiting.entries()) {
    const share = Math.max(0, end - tools.clock()) / (waiting.length - index);
    const told = (stand: Stand): void => progress(demand.stock.name, stand);
    plans.set(demand, planStock(demand, kits, bench, share, tools, told));
  }
  return demands.flatMap((demand) => plans.get(demand) ?? []);
}
