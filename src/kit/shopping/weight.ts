import { grammageOf } from '../../shape/caliper.ts';
import type { StockDemand } from '../demand.ts';
import type { Kit } from '../plan.ts';

/** Square millimetres in a square metre. */
const SQUARE_METRE = 1_000_000;

/** Pieces as they are cut, before corners and tapers are cut off: a little on the safe side for the post. */
export function weightOf(stocks: readonly StockDemand[]): Kit['weight'] {
  const known = stocks.filter(({ stock }) => stock.weight !== undefined);
  const gramsPerKit = known.reduce((sum, demand) => sum + gramsOf(demand), 0);
  return {
    gramsPerKit,
    without: stocks.filter(({ stock }) => stock.weight === undefined).map(({ stock }) => stock.name),
  };
}

function gramsOf({ stock, kinds }: StockDemand): number {
  const area = kinds.reduce((sum, { size, pieces }) => {
    const count = pieces.reduce((total, { perKit }) => total + perKit, 0);
    return sum + size.width.mm * size.height.mm * count;
  }, 0);
  return stock.weight ? (area / SQUARE_METRE) * grammageOf(stock.weight.value) : 0;
}
