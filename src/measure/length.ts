import Fraction from 'fraction.js';

/** The units a person may write. Everything is kept exactly, whatever it was written in. */
export type Unit = 'in' | 'mm' | 'cm';

declare const millimeters: unique symbol;
/** A floating-point number of millimeters, for drawing and folding only; never for deciding what fits. */
type Millimeters = number & { readonly [millimeters]: true };

/** How many millimeters each unit is, exactly: 1 in = 25.4 mm (international yard of 1959; NIST SP 811, B.8). */
const MM_PER: Record<Unit, Fraction> = {
  mm: new Fraction(1n, 1n),
  cm: new Fraction(10n, 1n),
  in: new Fraction(127n, 5n),
};

const HALF: Fraction = new Fraction(1n, 2n);

/** By how much of itself a length as a floating-point number may be off, with room to spare: its three roundings. */
const OFF: number = 2 ** -50;

/** A whole-number ratio, the only form in which a number enters or leaves a length exactly. */
export type Ratio = { readonly numerator: bigint; readonly denominator: bigint };

/**
 * An exact length: a rational number of millimeters. Immutable; may be zero or negative,
 * since differences (reveals, overhangs) are lengths too.
 */
export class Length {
  static readonly zero: Length = new Length(new Fraction(0n, 1n));
  readonly #mm: Fraction;
  #near: Millimeters | undefined;

  private constructor(mm: Fraction) {
    this.#mm = mm;
  }

  /**
   * `numerator / denominator` of a unit.
   * @throws RangeError when the denominator is zero.
   */
  static of(numerator: bigint | number, denominator: bigint | number, unit: Unit): Length {
    const bottom = BigInt(denominator);
    if (bottom === 0n) throw new RangeError('a length cannot have a denominator of zero');
    return new Length(new Fraction(BigInt(numerator), bottom).mul(MM_PER[unit]));
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
    return new Length(this.#mm.add(other.#mm));
  }

  minus(other: Length): Length {
    return new Length(this.#mm.sub(other.#mm));
  }

  /** This length times `numerator / denominator`, exactly. */
  times(numerator: bigint | number, denominator: bigint | number = 1n): Length {
    return new Length(this.#mm.mul(new Fraction(BigInt(numerator), BigInt(denominator))));
  }

  half(): Length {
    return new Length(this.#mm.mul(HALF));
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
    const order = this.#mm.compare(other.#mm);
    return order < 0 ? -1 : order > 0 ? 1 : 0;
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
    const value = this.#mm.div(MM_PER[unit]);
    return { numerator: value.s * value.n, denominator: value.d };
  }

  /** Whether this length is a whole multiple of `step`: whether it lies on a board's groove, say. */
  isMultipleOf(step: Length): boolean {
    return this.#mm.div(step.#mm).d === 1n;
  }

  /** How many times `other` goes into this length, exactly. @throws when `other` is zero. */
  over(other: Length): Ratio {
    const value = this.#mm.div(other.#mm);
    return { numerator: value.s * value.n, denominator: value.d };
  }

  /** The nearest floating-point number of millimeters, for drawing. */
  get mm(): Millimeters {
    this.#near ??= this.#mm.valueOf() as Millimeters;
    return this.#near;
  }

  /** The exact number of inches, `9/4 in`: the same text for equal lengths only, so that maps may have it for a key. */
  toString(): string {
    const { numerator, denominator } = this.in('in');
    return denominator === 1n ? `${numerator} in` : `${numerator}/${denominator} in`;
  }
}
