import type { Finding } from '../project/finding.ts';
import type { Pricing } from '../project/pricing.ts';
import type { CuttingBench } from './bench.ts';
import { demandOf, type StockDemand } from './demand.ts';
import { findObstacles } from './obstacles.ts';
import type { Kit, Making, StockPlan } from './plan.ts';
import { type PlanTools, planStock } from './plan-stock.ts';
import { costOf } from './shopping/cost.ts';
import { shoppingList } from './shopping/list.ts';
import { weightOf } from './shopping/weight.ts';
import type { Standing } from './solver/plan-sheets.ts';
import { Work } from './solver/work.ts';

const STEPS = 1e6;

/** For whom a kit is made. */
export type KitOrder = {
  /** At least 1. */
  readonly attendees: number;
  /** Kits more than attendees; of each variant where several are made. */
  readonly spares: number;
  /** What goes into the price of a place; no price is named without it. */
  readonly pricing?: Pricing;
  /** How many parcels are posted, where that is known. */
  readonly parcels?: number;
  readonly bench: CuttingBench;
  /** How far a better plan is looked for, for all stocks together, in millions of steps: about so many seconds. */
  readonly work: number;
};

/** A plan, or everything that prevents it. */
export type KitResult = { readonly kit: Kit } | { readonly findings: readonly Finding[] };

/** Told of each better plan of a stock, by its name; where its sheets have prices, how dear it is and not how many. */
export type KitProgress = (stock: string, standing: Standing & { readonly isPriced: boolean }) => void;

/**
 * Plans a class kit: of a project, or of some of its variants together. Where they come to more than the attendees,
 * everybody makes one of each. What cannot be planned is told, not thrown.
 */
export function planKit(
  makings: readonly [Making, ...Making[]],
  order: KitOrder,
  tools: PlanTools,
  progress: KitProgress = () => {},
): KitResult {
  const { attendees, spares, pricing, parcels, bench } = order;
  const findings = makings.flatMap(({ project, shapes }) => findObstacles(project, shapes, bench));
  if (findings.length > 0) return { findings };
  const [{ project }] = makings;
  const made = makings.map((making) => ({ ...making, kits: making.attendees + spares }));
  const demands = demandOf(made);
  const isEach = made.reduce((sum, making) => sum + making.attendees, 0) > attendees;
  const kits = isEach ? attendees + spares : made.reduce((sum, making) => sum + making.kits, 0);
  const stocks = planStocks(demands, order, tools, progress);
  const shopping = shoppingList([{ project, attendees, kits }], stocks);
  const course = pricing && { pricing, parcels, minutes: project.minutes?.value };
  return {
    kit: {
      project,
      makings,
      attendees,
      spares: kits - attendees,
      bench,
      stocks,
      shopping,
      cost: costOf(shopping, attendees, course),
      weight: weightOf(demands, kits),
    },
  };
}

/** The easiest first, so that the work they leave goes to the others; in the order given. */
export function planStocks(
  demands: readonly StockDemand[],
  { bench, work }: Pick<KitOrder, 'bench' | 'work'>,
  tools: PlanTools,
  progress: KitProgress,
): readonly StockPlan[] {
  let left = work * STEPS;
  const ease = ({ kinds, stock }: StockDemand): number => kinds.length * stock.sheets.length;
  const waiting = demands.toSorted((a, b) => ease(a) - ease(b));
  const plans = new Map<StockDemand, StockPlan>();
  for (const [index, demand] of waiting.entries()) {
    const share = Math.max(0, left) / (waiting.length - index);
    const own = new Work(share);
    const plan = planStock(demand, bench, own, tools, (standing) => progress(demand.stock.name, standing));
    left -= share - own.left;
    plans.set(demand, plan);
  }
  return demands.flatMap((demand) => plans.get(demand) ?? []);
}
