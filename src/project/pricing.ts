import type Fraction from 'fraction.js';
import type { Money } from './stock.ts';

/** What goes into the price of a class, besides what its kits use up. What is not said is not known. */
export type Pricing = {
  /** Of an hour of the host's work, and how many hours a class takes. */
  readonly rate?: Money;
  readonly hours?: Fraction;
  /** For each person. */
  readonly toolWear?: Money;
  /** For a class. */
  readonly room?: Money;
  /** Of a booking platform: for each place, and percent of the price. */
  readonly platform?: Money;
  readonly platformShare?: Fraction;
  /** Of a parcel. */
  readonly postage?: Money;
  /** Percent of the price. */
  readonly margin?: Fraction;
};

/** Whether what is taken of each price leaves something to pay with. */
export function leavesSomething({ margin, platformShare }: Pricing): boolean {
  return !margin || !platformShare || margin.add(platformShare).compare(100n) < 0;
}
