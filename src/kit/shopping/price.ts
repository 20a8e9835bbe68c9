import Fraction from 'fraction.js';
import type { Pricing } from '../../project/pricing.ts';
import type { Money } from '../../project/stock.ts';

/** A class as far as its price goes. */
export type Course = {
  readonly pricing: Pricing;
  /** How many are posted, where that is known. */
  readonly parcels: number | undefined;
  /** How long it takes by its sheet. */
  readonly minutes: number | undefined;
};

/** For the class, and a share of it for each person; both rounded to the smallest unit, half up. */
export type Shares = { readonly all: Money; readonly each: Money };

export type PricePart = {
  readonly kind: 'materials' | 'wear' | 'work' | 'room' | 'platform' | 'postage';
  /** Undefined where it is not given: an unknown cost is never zero. */
  readonly shares: Shares | undefined;
  /** Of the work: how many hours; of the postage: how many parcels. */
  readonly count?: Fraction | undefined;
};

/** The price of a place, part by part. It is what all parts that are given come to, and a margin. */
export type ClassPrice = {
  readonly parts: readonly PricePart[];
  /** Percent of the price. */
  readonly margin: Fraction | undefined;
  /** The margin, and what rounding the parts and the price leaves: with the parts it makes the price, to the last unit. */
  readonly left: Shares | undefined;
  /** Rounded up for each. Undefined where nothing of it is known. */
  readonly price: Shares | undefined;
};

const NONE: Fraction = new Fraction(0n, 1n);

/**
 * The price that pays for all parts, and leaves its margin: at 20 %, a cost of 4.00 makes a price of 5.00.
 * @param materials what all kits use up, as far as it is known, in the smallest unit of money.
 */
export function priceOf(materials: Fraction | undefined, people: number, course: Course): ClassPrice {
  const { pricing } = course;
  const margin = pricing.margin;
  const takes = pricing.platformShare ?? NONE;
  const fixed = fixedParts(materials, people, course);
  const known = fixed.flatMap(({ cost }) => cost ?? []);
  const each =
    known.length > 0 ? partLeft((margin ?? NONE).add(takes), sumOf(known).div(people)).ceil() : undefined;
  const price = each && { all: { minor: each.n * BigInt(people) }, each: { minor: each.n } };
  const parts = fixed.map(({ kind, cost, count }): PricePart => {
    const taken =
      kind === 'platform' && each && pricing.platformShare && each.mul(people).mul(takes).div(100n);
    const whole = taken ? taken.add(cost ?? NONE) : cost;
    return { kind, shares: whole && sharesOf(whole, people), ...(count && { count }) };
  });
  return { parts, margin, price, left: price && leftOf(price, parts) };
}

type FixedPart = {
  readonly kind: PricePart['kind'];
  readonly cost: Fraction | undefined;
  readonly count?: Fraction | undefined;
};

/** What does not depend on the price, in the order in which it is told. */
function fixedParts(
  materials: Fraction | undefined,
  people: number,
  { pricing, parcels, minutes }: Course,
): readonly FixedPart[] {
  const { rate, hours, toolWear, room, platform, postage } = pricing;
  const time = hours ?? (minutes === undefined ? undefined : new Fraction(minutes, 60));
  const posted = parcels === undefined ? undefined : new Fraction(parcels, 1);
  const all = new Fraction(people, 1);
  return [
    { kind: 'materials', cost: materials },
    { kind: 'wear', cost: timesOf(toolWear, all) },
    { kind: 'work', cost: timesOf(rate, time), count: rate && time },
    { kind: 'room', cost: timesOf(room, new Fraction(1, 1)) },
    { kind: 'platform', cost: timesOf(platform, all) },
    { kind: 'postage', cost: timesOf(postage, posted), count: postage && posted },
  ];
}

function timesOf(money: Money | undefined, count: Fraction | undefined): Fraction | undefined {
  return money && count?.mul(money.minor);
}

/** The whole of which so many percent are taken and this is left. */
function partLeft(percent: Fraction, rest: Fraction): Fraction {
  return rest.div(new Fraction(100n, 1n).sub(percent)).mul(100n);
}

function sharesOf(whole: Fraction, people: number): Shares {
  return { all: rounded(whole), each: rounded(whole.div(people)) };
}

function leftOf(price: Shares, parts: readonly PricePart[]): Shares {
  const rest = (of: keyof Shares): Money => ({
    minor: parts.reduce((left, { shares }) => left - (shares?.[of].minor ?? 0n), price[of].minor),
  });
  return { all: rest('all'), each: rest('each') };
}

function sumOf(amounts: readonly Fraction[]): Fraction {
  return amounts.reduce((sum, amount) => sum.add(amount), NONE);
}

/** To the smallest unit of money, half up. */
export function rounded(amount: Fraction): Money {
  return { minor: amount.mul(2n).add(1n).div(2n).floor().n };
}
