import Fraction from 'fraction.js';
import type { Unit } from '../../measure/length.ts';
import type { Size } from '../../measure/size.ts';
import type { Money } from '../../project/stock.ts';
import type { SupplyKind } from '../../project/supply.ts';
import { type Amount, areAlike } from './amount.ts';

/** What prevents a sum: how much is needed, what it costs, or a pack that is measured in something else. */
type Missing = 'amount' | 'price' | 'pack';

/** What is needed of something, what is there, and how it is sold. */
export type Need = {
  readonly needed: Amount;
  readonly onHand: Amount | undefined;
  readonly pack: Amount | undefined;
  /** Of a pack, or of one thing; of paper, of one sheet. */
  readonly price: Money | undefined;
  /** Whether the price is that of a pack, or of one thing in it. */
  readonly priced: 'pack' | 'one';
};

/** What follows from a need, as far as it is known. */
type Reckoned = Partial<Omit<Need, 'priced'>> & {
  /** What is needed and not on hand. */
  readonly toGet?: Amount;
  /** How many packs that makes, or single things where there is no pack. */
  readonly buy?: bigint;
  /** Of all that is to be bought. */
  readonly cost?: Money;
  /** The worth of what the kits use up, in the smallest unit, exactly. */
  readonly used?: Fraction;
  readonly gaps: readonly Missing[];
};

/** One line of the shopping list. */
export type ShoppingLine = Reckoned & {
  /** Of the project that first wants it: its amounts are told in it. */
  readonly unit: Unit;
  readonly item: string;
  /** The set or range it comes from. */
  readonly from?: string | undefined;
  readonly kind: SupplyKind | 'stock';
  /** Of paper. */
  readonly sheet?: Size;
  /** Used up by the kits; otherwise kept, like a tool. */
  readonly consumed: boolean;
  /** How many people share one. */
  readonly share?: number | undefined;
  /** What one kit takes, as an amount or only as it was written. */
  readonly each?: Amount;
  readonly written?: string | undefined;
  /** What is on hand as it was written: `1 pack`. */
  readonly onHandWritten?: string | undefined;
  /** The pack as it was written: `10 yd`. */
  readonly packWritten?: string | undefined;
};

/** Takes what is on hand from what is needed, rounds up to packs, and multiplies by the price. Exact. */
export function reckon({ needed, onHand, pack, price, priced }: Need): Reckoned {
  const there = onHand && areAlike(needed, onHand) ? onHand.value : undefined;
  const rest = there ? needed.value.sub(there) : needed.value;
  const toGet: Amount = { ...needed, value: rest.compare(0n) < 0 ? rest.mul(0n) : rest };
  const line = { needed, onHand, pack, price, toGet };
  const unlike = (onHand && !there) || (pack && !areAlike(needed, pack));
  if (unlike || pack?.value.equals(0n)) return { ...line, gaps: ['pack'] };
  if (!pack && needed.kind !== 'count') return { ...line, gaps: ['price'] };
  // What comes without a pack is bought one by one.
  const size = pack?.value ?? new Fraction(1n, 1n);
  const buy = toGet.value.div(size).ceil().n;
  if (!price) return { ...line, buy, gaps: ['price'] };
  const perPack = priced === 'one' ? size.mul(price.minor) : new Fraction(price.minor, 1n);
  const cost = { minor: perPack.mul(buy).ceil().n };
  return { ...line, buy, cost, used: needed.value.div(size).mul(perPack), gaps: [] };
}
