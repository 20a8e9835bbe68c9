import { grammageOf } from '../../shape/caliper.ts';
import type { StockDemand } from '../demand.ts';
import type { Kit } from '../plan.ts';

/** Square millimetres in a square metre. */
const SQUARE_METRE = 1_000_000;

/** Pieces as they are cut, before corners and tapers are cut off: a little on the safe side for the post. */
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
  const area = kinds.reduce((sum, { size, pieces }) => {
    const count = pieces.reduce((total, { perKit, kits }) => total + perKit * (kits / all), 0);
    return sum + size.width.mm * size.height.mm * count;
  }, 0);
  return (area / SQUARE_METRE) * grammageOf(stock.weight.value);
}
