import Fraction from 'fraction.js';
import type { Money } from '../../project/stock.ts';
import type { ShoppingLine } from './line.ts';
import { type ClassPrice, type Course, priceOf, rounded } from './price.ts';

/**
 * A sum, and the names of what it leaves out because its amount or price is not known. Without a total where nothing
 * of it is known: an unknown cost is never zero.
 */
export type Sum = { readonly total: Money | undefined; readonly without: readonly string[] };

export type Cost = {
  /** What is to be paid now: whole packs, less what is on hand. */
  readonly toBuy: Sum;
  /** What the kits use up, whether bought now or on hand; tools are not used up. Rounded to the smallest unit. */
  readonly used: Sum;
  /** A share of what is used for each attendee, spares included, rounded to the smallest unit, half up. */
  readonly perAttendee: Money | undefined;
  /** The price of a place, where one is asked for. */
  readonly price?: ClassPrice;
};

/** The cost of all kits, exactly: rounded only where an amount of money is given. */
export function costOf(lines: readonly ShoppingLine[], attendees: number, course?: Course): Cost {
  const toBuy = lines.filter((line) => !isOnHand(line));
  const consumed = lines.filter((line) => line.consumed);
  const paid = known(toBuy.map(({ cost }) => cost?.minor));
  const used = known(consumed.map((line) => line.used));
  const each = used?.div(BigInt(attendees));
  return {
    toBuy: {
      total: paid && rounded(paid),
      without: namesOf(toBuy.filter(({ cost }) => cost === undefined)),
    },
    used: {
      total: used && rounded(used),
      without: namesOf(consumed.filter((line) => line.used === undefined)),
    },
    perAttendee: each && rounded(each),
    ...(course && { price: priceOf(used, attendees, course) }),
  };
}

/** What the known amounts come to; undefined when there are amounts and none of them is known. */
function known(amounts: readonly (bigint | Fraction | undefined)[]): Fraction | undefined {
  const given = amounts.filter((amount) => amount !== undefined);
  if (given.length === 0 && amounts.length > 0) return undefined;
  return given.reduce<Fraction>((sum, amount) => sum.add(amount), new Fraction(0n, 1n));
}

/** Nothing of it is to be got. */
function isOnHand({ toGet }: ShoppingLine): boolean {
  return toGet?.value.equals(0n) ?? false;
}

function namesOf(lines: readonly ShoppingLine[]): readonly string[] {
  return [...new Set(lines.map(({ item }) => item))];
}
