import type { CuttingBench } from '../kit/bench.ts';
import { demandOf } from '../kit/demand.ts';
import { type KitOrder, type KitProgress, planStocks } from '../kit/kit.ts';
import { findObstacles } from '../kit/obstacles.ts';
import type { StockPlan } from '../kit/plan.ts';
import type { PlanTools } from '../kit/plan-stock.ts';
import { type Cost, costOf } from '../kit/shopping/cost.ts';
import type { ShoppingLine } from '../kit/shopping/line.ts';
import { shoppingList } from '../kit/shopping/list.ts';
import type { Finding } from '../project/finding.ts';
import { type Preparation, preparationsOf } from './preparation.ts';
import type { SeasonSession } from './session.ts';

/** Everything for several sessions together: cut from the same sheets, bought once. */
export type Season = {
  /** By date. */
  readonly sessions: readonly SeasonSession[];
  /** Kits more than attendees, of each session. */
  readonly spares: number;
  readonly bench: CuttingBench;
  readonly stocks: readonly StockPlan[];
  readonly shopping: readonly ShoppingLine[];
  readonly cost: Cost;
  /** What is to be done, by date. */
  readonly preparations: readonly Preparation[];
};

/** A plan, or everything that prevents it. */
type SeasonResult = { readonly season: Season } | { readonly findings: readonly Finding[] };

/**
 * Plans sessions together. A sheet is cut for the first session that needs a piece of it: what else it gives is put aside
 * for the later ones.
 */
export function planSeason(
  sessions: readonly SeasonSession[],
  order: Pick<KitOrder, 'spares' | 'bench' | 'work'>,
  tools: PlanTools,
  progress: KitProgress = () => {},
): SeasonResult {
  const { spares, bench } = order;
  const findings = sessions.flatMap(({ project, shapes }) => findObstacles(project, shapes, bench));
  if (findings.length > 0) return { findings };
  const dated = sessions.toSorted((a, b) => (a.session.date < b.session.date ? -1 : 1));
  const made = dated.map((each) => ({ ...each, kits: each.attendees + spares }));
  const stocks = planStocks(demandOf(made), order, tools, progress);
  const shopping = shoppingList(made, stocks);
  const people = dated.reduce((sum, { attendees }) => sum + attendees, 0);
  return {
    season: {
      sessions: dated,
      spares,
      bench,
      stocks,
      shopping,
      cost: costOf(shopping, people),
      preparations: preparationsOf(dated, stocks, shopping),
    },
  };
}
