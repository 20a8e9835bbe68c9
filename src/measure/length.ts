import Fraction from 'fraction.js';

/** The units a person may write. Everything is kept exactly, whatever it was written in. */
export type Unit = 'in' | 'mm' | 'cm';

declare const millimeters: unique symbol;
/** A floating-point number of millimeters, for drawing and folding only; never for deciding what fits. */
type Millimeters = number & { readonly [millimeters]: true };

/** A whole-number ratio, the only form in which a number enters or leaves a length exactly. */
export type Ratio = { readonly numerator: bigint; readonly denominator: bigint };

type Whole = bigint | number;

/** Below it, the sum of two products of whole numbers is one that a floating-point number has exactly. */
const SMALL = 2 ** 26;

/**
 * An exact rational number. Nearly all that a project has are ratios of small numbers, which the processor adds and
 * multiplies at once; fraction.js does the same to any others, at many times the cost.
 */
class Rational {
  /** In lowest terms with a positive denominator. */
  readonly #numerator: number;
  readonly #denominator: number;
  /** In the place of those, where they would not be small. */
  readonly #large: Fraction | undefined;

  private constructor(numerator: number, denominator: number, large?: Fraction) {
    this.#numerator = numerator;
    this.#denominator = denominator;
    this.#large = large;
  }

  /** @throws RangeError of a number that is not whole; Error when the denominator is zero. */
  static of(numerator: Whole, denominator: Whole): Rational {
    const [top, bottom] = [smallWhole(numerator), smallWhole(denominator)];
    if (top === undefined || bottom === undefined || bottom <= 0)
      return Rational.#ofFraction(new Fraction(BigInt(numerator), BigInt(denominator)));
    return Rational.#reduced(top, bottom);
  }

  /** @param denominator More than nothing. Both are whole numbers that are held exactly. */
  static #reduced(numerator: number, denominator: number): Rational {
    const divisor = commonDivisor(Math.abs(numerator), denominator);
    // Nothing has no sign.
    const [top, bottom] = [numerator / divisor + 0, denominator / divisor];
    if (Math.abs(top) < SMALL && bottom < SMALL) return new Rational(top, bottom);
    return new Rational(0, 0, new Fraction(BigInt(top), BigInt(bottom)));
  }

  static #ofFraction(fraction: Fraction): Rational {
    const [top, bottom] = [smallWhole(fraction.s * fraction.n), smallWhole(fraction.d)];
    if (top === undefined || bottom === undefined) return new Rational(0, 0, fraction);
    return new Rational(top, bottom);
  }

  plus(other: Rational): Rational {
    if (this.#large || other.#large) return Rational.#ofFraction(this.#fraction.add(other.#fraction));
    const [a, b, c, d] = [this.#numerator, this.#denominator, other.#numerator, other.#denominator];
    return Rational.#reduced(a * d + c * b, b * d);
  }

  minus(other: Rational): Rational {
    if (this.#large || other.#large) return Rational.#ofFraction(this.#fraction.sub(other.#fraction));
    const [a, b, c, d] = [this.#numerator, this.#denominator, other.#numerator, other.#denominator];
    return Rational.#reduced(a * d - c * b, b * d);
  }

  times(other: Rational): Rational {
    if (this.#large || other.#large) return Rational.#ofFraction(this.#fraction.mul(other.#fraction));
    return Rational.#reduced(this.#numerator * other.#numerator, this.#denominator * other.#denominator);
  }

  /** @throws Error when `other` is zero. */
  over(other: Rational): Rational {
    if (this.#large || other.#large || other.#numerator === 0)
      return Rational.#ofFraction(this.#fraction.div(other.#fraction));
    const sign = Math.sign(other.#numerator);
    return Rational.#reduced(
      sign * this.#numerator * other.#denominator,
      sign * this.#denominator * other.#numerator,
    );
  }

  abs(): Rational {
    return (this.#large?.s ?? this.#numerator) < 0 ? this.times(Rational.of(-1, 1)) : this;
  }

  compare(other: Rational): -1 | 0 | 1 {
    const order =
      this.#large || other.#large
        ? this.#fraction.compare(other.#fraction)
        : this.#numerator * other.#denominator - other.#numerator * this.#denominator;
    return order < 0 ? -1 : order > 0 ? 1 : 0;
  }

  get isWhole(): boolean {
    return this.#large ? this.#large.d === 1n : this.#denominator === 1;
  }

  /** The nearest floating-point number. */
  get near(): number {
    return this.#large ? this.#large.valueOf() : this.#numerator / this.#denominator;
  }

  get ratio(): Ratio {
    if (!this.#large) return { numerator: BigInt(this.#numerator), denominator: BigInt(this.#denominator) };
    const { s, n, d } = this.#large;
    return { numerator: s * n, denominator: d };
  }

  get #fraction(): Fraction {
    return this.#large ?? new Fraction(BigInt(this.#numerator), BigInt(this.#denominator));
  }
}

/** A small whole number as a floating-point one; undefined of any other. */
function smallWhole(value: Whole): number | undefined {
  const number = Number(value);
  return Number.isInteger(number) && Math.abs(number) < SMALL ? number : undefined;
}

/** Euclid's. */
function commonDivisor(one: number, other: number): number {
  let [a, b] = [one, other];
  while (b !== 0) [a, b] = [b, a % b];
  return a;
}

/** How many millimeters each unit is, exactly: 1 in = 25.4 mm (international yard of 1959; NIST SP 811, B.8). */
const MM_PER: Record<Unit, Rational> = {
  mm: Rational.of(1, 1),
  cm: Rational.of(10, 1),
  in: Rational.of(127, 5),
};

/** By how much of itself a length as a floating-point number may be off, with room to spare: its three roundings. */
const OFF: number = 2 ** -50;

/**
 * An exact length: a rational number of millimeters. Immutable; may be zero or negative,
 * since differences (reveals, overhangs) are lengths too.
 */
export class Length {
  static readonly zero: Length = new Length(Rational.of(0, 1));
  readonly #mm: Rational;
  #near: Millimeters | undefined;

  private constructor(mm: Rational) {
    this.#mm = mm;
  }

  /**
   * `numerator / denominator` of a unit.
   * @throws RangeError when the denominator is zero.
   */
  static of(numerator: bigint | number, denominator: bigint | number, unit: Unit): Length {
    if (BigInt(denominator) === 0n) throw new RangeError('a length cannot have a denominator of zero');
    return new Length(Rational.of(numerator, denominator).times(MM_PER[unit]));
  }

  /** The exact sum; zero for an empty list. */
  static sum(lengths: Iterable<Length>): Length {
    let total = Length.zero;
    for (const length of lengths) total = total.plus(length);
    return total;
  }

  static min(first: Length, ...rest: Length[]): Length {
    return rest.reduce((least, each) => (each.lessThan(least) ? each : least), first);
  }

  static max(first: Length, ...rest: Length[]): Length {
    return rest.reduce((most, each) => (most.lessThan(each) ? each : most), first);
  }

  plus(other: Length): Length {
    return new Length(this.#mm.plus(other.#mm));
  }

  minus(other: Length): Length {
    return new Length(this.#mm.minus(other.#mm));
  }

  /** This length times `numerator / denominator`, exactly. */
  times(numerator: bigint | number, denominator: bigint | number = 1): Length {
    return new Length(this.#mm.times(Rational.of(numerator, denominator)));
  }

  half(): Length {
    return this.times(1, 2);
  }

  abs(): Length {
    return new Length(this.#mm.abs());
  }

  /** -1, 0 or 1, as for sorting. Exact: floating-point numbers answer only where they are too far apart to be wrong. */
  compare(other: Length): -1 | 0 | 1 {
    const [own, others] = [this.mm, other.mm];
    const off = (Math.abs(own) + Math.abs(others)) * OFF;
    if (own - others > off) return 1;
    if (others - own > off) return -1;
    return this.#mm.compare(other.#mm);
  }

  equals(other: Length): boolean {
    return this.compare(other) === 0;
  }

  lessThan(other: Length): boolean {
    return this.compare(other) < 0;
  }

  greaterThan(other: Length): boolean {
    return this.compare(other) > 0;
  }

  get sign(): -1 | 0 | 1 {
    return this.compare(Length.zero);
  }

  /** The exact number of `unit` in this length, in lowest terms with a positive denominator. */
  in(unit: Unit): Ratio {
    return this.#mm.over(MM_PER[unit]).ratio;
  }

  /** Whether this length is a whole multiple of `step`: whether it lies on a board's groove, say. */
  isMultipleOf(step: Length): boolean {
    return this.#mm.over(step.#mm).isWhole;
  }

  /** How many times `other` goes into this length, exactly. @throws when `other` is zero. */
  over(other: Length): Ratio {
    return this.#mm.over(other.#mm).ratio;
  }

  /** The nearest floating-point number of millimeters, for drawing. */
  get mm(): Millimeters {
    this.#near ??= this.#mm.near as Millimeters;
    return this.#near;
  }

  /** The exact number of inches, `9/4 in`: the same text for equal lengths only, so that maps may have it for a key. */
  toString(): string {
    const { numerator, denominator } = this.in('in');
    return denominator === 1n ? `${numerator} in` : `${numerator}/${denominator} in`;
  }
}
