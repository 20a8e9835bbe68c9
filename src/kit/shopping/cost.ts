import Fraction from 'fraction.js';
import type { Money } from '../../project/stock.ts';
import type { ShoppingLine } from './line.ts';

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
  /** The price of a place: so that `margin` percent of it are left when the cost is paid. Rounded up. */
  readonly price?: { readonly margin: Fraction; readonly each: Money };
};

/**
 * The cost of all kits, exactly: rounded only where an amount of money is given.
 * @param margin percent of the price, from 0 to less than 100.
 */
export function costOf(
  lines: readonly ShoppingLine[],
  attendees: number,
  margin: Fraction | undefined,
): Cost {
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
    ...(margin && each ? { price: { margin, each: priceFor(each, margin) } } : {}),
  };
}

/** What the known amounts come to; undefined when there are amounts and none of them is known. */
function known(amounts: readonly (bigint | Fraction | undefined)[]): Fraction | undefined {
  const given = amounts.filter((amount) => amount !== undefined);
  if (given.length === 0 && amounts.length > 0) return undefined;
  return given.reduce<Fraction>((sum, amount) => sum.add(amount), new Fraction(0n, 1n));
}

/** Margin is the part of a price that is not cost: at 20 %, a cost of 4.00 makes a price of 5.00. */
function priceFor(cost: Fraction, margin: Fraction): Money {
  const share = new Fraction(100n, 1n).sub(margin).div(100n);
  return { minor: cost.div(share).ceil().n };
}

/** Nothing of it is to be got. */
function isOnHand({ toGet }: ShoppingLine): boolean {
  return toGet?.value.equals(0n) ?? false;
}

function namesOf(lines: readonly ShoppingLine[]): readonly string[] {
  return [...new Set(lines.map(({ item }) => item))];
}

function rounded(amount: Fraction): Money {
  return { minor: amount.mul(2n).add(1n).div(2n).floor().n };
}
