import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compare, gcd } from '../../src/measure/numbers.ts';

describe('the greatest common divisor', () => {
  it.each([
    [12n, 18n, 6n],
    [18n, 12n, 6n],
    [7n, 5n, 1n],
    [0n, 9n, 9n],
    [9n, 0n, 9n],
    [0n, 0n, 0n],
    [2n ** 80n, 6n ** 40n, 2n ** 40n],
  ])('of %s and %s is %s', (a, b, divisor) => {
    expect(gcd(a, b)).toBe(divisor);
  });

  it('divides both, and leaves nothing in common', () => {
    const whole = fc.bigInt({ min: 1n, max: 10n ** 30n });
    fc.assert(
      fc.property(whole, whole, (a, b) => {
        const divisor = gcd(a, b);
        expect([a % divisor, b % divisor, gcd(a / divisor, b / divisor)]).toEqual([0n, 0n, 1n]);
      }),
      { seed: 5 },
    );
  });
});

describe('the order of texts', () => {
  it('is that of their code units, and not that of a language', () => {
    expect(['b', 'a', 'Z', 'ä', '10', '9', ''].sort(compare)).toEqual(['', '10', '9', 'Z', 'a', 'b', 'ä']);
  });

  it('is an order: the same both ways, and none of a text with itself', () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), (a, b) => {
        expect(Math.sign(compare(a, b)) + Math.sign(compare(b, a))).toBe(0);
        expect(compare(a, b) === 0).toBe(a === b);
      }),
      { seed: 5 },
    );
  });
});
