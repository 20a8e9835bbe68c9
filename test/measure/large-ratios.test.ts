import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import { Length, type Ratio } from '../../src/measure/length.ts';

/** Small ones, some at the bound up to which the processor's own numbers are reckoned with, and some far beyond it. */
const whole = fc.oneof(
  fc.integer({ min: -700, max: 700 }),
  fc.integer({ min: -5, max: 5 }).map((off) => 2 ** 26 + off),
  fc.maxSafeInteger(),
  fc.bigInt({ min: -(10n ** 30n), max: 10n ** 30n }),
);
const notNothing = whole.filter((number) => BigInt(number) !== 0n);

const ratioOf = ({ s, n, d }: Fraction): Ratio => ({ numerator: s * n, denominator: d });

describe('a length', () => {
  it('is what fraction.js makes of the same numbers, small or large', () => {
    const numbers = fc.tuple(whole, notNothing, whole, notNothing);
    fc.assert(
      fc.property(numbers, ([top, bottom, otherTop, otherBottom]) => {
        const [a, b] = [Length.of(top, bottom, 'mm'), Length.of(otherTop, otherBottom, 'mm')];
        const x = new Fraction(BigInt(top), BigInt(bottom));
        const y = new Fraction(BigInt(otherTop), BigInt(otherBottom));
        expect(a.in('mm')).toEqual(ratioOf(x));
        expect(a.in('in')).toEqual(ratioOf(x.mul(5n).div(127n)));
        expect(a.plus(b).in('mm')).toEqual(ratioOf(x.add(y)));
        expect(a.minus(b).in('mm')).toEqual(ratioOf(x.sub(y)));
        expect(a.times(otherTop, otherBottom).in('mm')).toEqual(ratioOf(x.mul(y)));
        expect(a.abs().in('mm')).toEqual(ratioOf(x.abs()));
        expect(a.compare(b)).toBe(Math.sign(x.compare(y)));
        expect(a.mm).toBe(x.valueOf());
        if (y.n === 0n) return;
        expect(a.over(b)).toEqual(ratioOf(x.div(y)));
        expect(a.isMultipleOf(b)).toBe(x.div(y).d === 1n);
      }),
      { numRuns: 500 },
    );
  });

  it('of nothing has no sign', () => {
    expect(Length.zero.times(-1, 2).mm).toBe(0);
    expect(Length.of(-1, 2, 'mm').plus(Length.of(1, 2, 'mm')).mm).toBe(0);
  });

  it('is no whole number of halves, and is not over nothing', () => {
    expect(() => Length.of(1.5, 1, 'mm')).toThrow(RangeError);
    expect(() => Length.of(1, 2, 'mm').over(Length.zero)).toThrow(Error);
    expect(() => Length.of(1, 2, 'mm').isMultipleOf(Length.zero)).toThrow(Error);
  });
});
