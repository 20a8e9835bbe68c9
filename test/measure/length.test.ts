import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Length, type Unit } from '../../src/measure/length.ts';
import { printDecimal } from '../../src/measure/print.ts';

const inches = (numerator: number, denominator = 1): Length => Length.of(numerator, denominator, 'in');

/**
 * Inch fractions in millimeters, exact. The sixteenths as printed (in centimeters) at quadibloc.com/other/cnvint.htm;
 * the others computed by hand from 1 in = 25.4 mm exactly (international yard of 1 July 1959, 0.9144 m; NIST SP 811,
 * appendix B.8).
 */
const TABLE: readonly (readonly [numerator: number, denominator: number, mm: string])[] = [
  [1, 64, '0.396875'],
  [1, 32, '0.79375'],
  [3, 64, '1.190625'],
  [1, 16, '1.5875'],
  [3, 32, '2.38125'],
  [1, 8, '3.175'],
  [5, 32, '3.96875'],
  [3, 16, '4.7625'],
  [1, 4, '6.35'],
  [5, 16, '7.9375'],
  [3, 8, '9.525'],
  [7, 16, '11.1125'],
  [1, 2, '12.7'],
  [9, 16, '14.2875'],
  [5, 8, '15.875'],
  [11, 16, '17.4625'],
  [3, 4, '19.05'],
  [13, 16, '20.6375'],
  [7, 8, '22.225'],
  [63, 64, '25.003125'],
  [17, 4, '107.95'],
  [11, 2, '139.7'],
  [17, 2, '215.9'],
  [11, 1, '279.4'],
  [12, 1, '304.8'],
];

describe('a length', () => {
  it.each(TABLE)('%i/%i in is exactly %s mm', (numerator, denominator, mm) => {
    expect(printDecimal(inches(numerator, denominator), 'mm', 8)).toBe(mm);
    expect(inches(numerator, denominator).equals(decimal(mm))).toBe(true);
  });

  it('makes a yard of 36 inches 914.4 mm exactly (Federal Register, 1 July 1959)', () => {
    expect(inches(36).in('mm')).toEqual({ numerator: 4572n, denominator: 5n });
  });

  it('does not lose what floating point loses', () => {
    expect(Length.sum([decimal('0.1'), decimal('0.2')]).equals(decimal('0.3'))).toBe(true);
    expect(Length.sum(Array.from({ length: 3 }, () => inches(1, 3))).equals(inches(1))).toBe(true);
  });

  it.each<[Length, Length, boolean]>([
    [inches(9, 4), inches(1, 8), true],
    [inches(9, 4), inches(1, 2), false],
    [inches(7, 16), inches(1, 8), false],
    [Length.of(57, 1, 'mm'), Length.of(5, 1, 'mm'), false],
    [Length.of(55, 1, 'mm'), Length.of(5, 1, 'mm'), true],
  ])('%s lies on a groove every %s: %s', (length, pitch, on) => {
    expect(length.isMultipleOf(pitch)).toBe(on);
  });

  it('refuses a denominator of zero, whoever asks', () => {
    expect(() => Length.of(1, 0, 'in')).toThrow(RangeError);
  });

  it('obeys the laws of arithmetic', () => {
    const unit = fc.constantFrom<Unit>('in', 'mm', 'cm');
    const length = fc
      .tuple(fc.integer({ min: -9999, max: 9999 }), fc.integer({ min: 1, max: 640 }), unit)
      .map((parts) => Length.of(...parts));
    fc.assert(
      fc.property(length, length, length, (a, b, c) => {
        expect(a.plus(b).equals(b.plus(a))).toBe(true);
        expect(
          a
            .plus(b)
            .plus(c)
            .equals(a.plus(b.plus(c))),
        ).toBe(true);
        expect(a.minus(b).plus(b).equals(a)).toBe(true);
        expect(a.half().plus(a.half()).equals(a)).toBe(true);
        expect(a.lessThan(b)).toBe(b.minus(a).sign === 1);
        expect(Length.min(a, b, c).greaterThan(Length.max(a, b, c))).toBe(false);
      }),
      { seed: 20261210, numRuns: 300 },
    );
  });
});

describe('the types', () => {
  it('keep plain numbers, millimeters for drawing and lengths apart', () => {
    const draw = (_x: Length['mm']): void => {};
    const cut = (_length: Length): void => {};
    draw(inches(1).mm);
    // @ts-expect-error a plain number may be in any unit
    draw(25.4);
    // @ts-expect-error an exact length is not yet a drawing's number
    draw(inches(1));
    // @ts-expect-error a rounded number never decides what is cut
    cut(inches(1).mm);
    // @ts-expect-error what has the methods of a length but was made elsewhere is none
    cut({ ...inches(1) });
    expect(inches(1).mm).toBe(25.4);
  });
});

function decimal(text: string): Length {
  const [whole = '', part = ''] = text.split('.');
  return Length.of(BigInt(whole + part), 10n ** BigInt(part.length), 'mm');
}
