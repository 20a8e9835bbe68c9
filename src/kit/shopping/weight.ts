import { grammageOf } from '../../shape/caliper.ts';
import type { StockDemand } from '../demand.ts';
import type { Kit } from '../plan.ts';

/** Square millimeters in a square meter. */
const SQUARE_METER = 1_000_000;

/** Outlines are cut out, corners and tapers are not yet cut off: a little on the safe side for the post. */
export function weightOf(stocks: readonly StockDemand[], kits: number): Kit['weight'] {
  const unknown = stocks.filter(({ stock }) => stock.weight === undefined);
  return {
    gramsPerKit: stocks.reduce((sum, demand) => sum + gramsOf(demand, kits), 0),
    without: unknown.map(({ stock }) => stock.name),
  };
}

/** In one kit; on the average where there are several variants. */
function gramsOf({ stock, kinds }: StockDemand, all: number): number {
  if (!stock.weight) return 0;
  const pieces = kinds.flatMap((kind) => kind.pieces);
  const area = pieces.reduce((sum, each) => sum + each.area * each.perKit * (each.kits / all), 0);
  return (area / SQUARE_METER) * grammageOf(stock.weight.value);
}
