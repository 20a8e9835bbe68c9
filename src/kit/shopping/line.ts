import Fraction from 'fraction.js';
import type { Size } from '../../measure/size.ts';
import type { Money, SupplyKind } from '../../project/model.ts';
import { type Amount, areAlike } from './amount.ts';

/** What stands in the way of a sum: how much is needed, what it costs, or a pack that is measured in something else. */
export type Gap = 'amount' | 'price' | 'pack';

/** One line of the shopping list. */
export type Line = {
  readonly item: string;
  readonly kind: SupplyKind | 'stock';
  /** Of paper. */
  readonly sheet?: Size;
  /** Used up by the kits; otherwise kept, like a tool. */
  readonly consumed: boolean;
  /** How many people share one. */
  readonly share?: number;
  /** What one kit takes, as an amount or only as it was written. */
  readonly each?: Amount;
  readonly written?: string;
  readonly needed?: Amount;
  readonly onHand?: Amount;
  /** What is on hand as it was written: `1 pack`. */
  readonly onHandWritten?: string;
  /** What is needed and not on hand. */
  readonly toGet?: Amount;
  readonly pack?: Amount;
  /** The pack as it was written: `10 yd`. */
  readonly packWritten?: string;
  /** How many packs that makes, or single things where there is no pack. */
  readonly buy?: bigint;
  /** Of a pack, or of one thing; of paper, of one sheet. */
  readonly price?: Money;
  /** Of all that is to be bought. */
  readonly cost?: Money;
  /** The worth of what the kits use up, in the smallest unit, exactly. */
  readonly used?: Fraction;
  readonly gaps: readonly Gap[];
};

/** What is needed of something, what is there, and how it is sold. */
export type Need = {
  readonly needed: Amount;
  readonly onHand: Amount | undefined;
  readonly pack: Amount | undefined;
  readonly price: Money | undefined;
  /** Whether the price is that of a pack, or of one thing in it. */
  readonly priced: 'pack' | 'one';
};

type Reckoned = Pick<Line, 'needed' | 'toGet' | 'buy' | 'cost' | 'used' | 'gaps'>;

/** Takes what is on hand from what is needed, rounds up to packs, and multiplies by the price. Exact. */
export function reckon({ needed, onHand, pack, price, priced }: Need): Reckoned {
  const there = onHand && areAlike(needed, onHand) ? onHand.value : undefined;
  const rest = there ? needed.value.sub(there) : needed.value;
  const toGet: Amount = { ...needed, value: rest.compare(0n) < 0 ? rest.mul(0n) : rest };
  const unlike = (onHand && !there) || (pack && !areAlike(needed, pack));
  if (unlike || pack?.value.equals(0n)) return { needed, toGet, gaps: ['pack'] };
  const single = !pack && needed.kind === 'count';
  if (!pack && !single) return { needed, toGet, gaps: ['price'] };
  const size = pack?.value;
  const buy = (size ? toGet.value.div(size) : toGet.value).ceil().n;
  if (!price) return { needed, toGet, buy, gaps: ['price'] };
  const perPack = priced === 'one' && size ? size.mul(price.minor) : new Fraction(price.minor, 1n);
  const cost = { minor: perPack.mul(buy).ceil().n };
  const used = size ? needed.value.div(size).mul(perPack) : needed.value.mul(perPack);
  return { needed, toGet, buy, cost, used, gaps: [] };
}
