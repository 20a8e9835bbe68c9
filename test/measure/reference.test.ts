import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import Qty from 'js-quantities';
import { describe, expect, it } from 'vitest';
import { Length, type Unit } from '../../src/measure/length.ts';
import { printDecimal } from '../../src/measure/print.ts';

/** Relative difference that double-precision conversions may show. */
const DOUBLE = 4 * Number.EPSILON;

describe('against js-quantities, a general library of units', () => {
  it('converts three thousand random lengths alike', () => {
    const unit = fc.constantFrom<Unit>('in', 'mm', 'cm');
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 64_000 }), unit, unit, (sixtyFourths, from, to) => {
        const ours = Length.of(sixtyFourths, 64, from).in(to);
        const theirs = Qty(sixtyFourths / 64, from).to(to).scalar;
        expect(Math.abs(Number(ours.numerator) / Number(ours.denominator) / theirs - 1)).toBeLessThanOrEqual(
          DOUBLE,
        );
      }),
      { seed: 254, numRuns: 3000 },
    );
  });

  it('gives a drawing the number the library gives', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 39 * 64 }), (sixtyFourths) => {
        const theirs = Qty(sixtyFourths / 64, 'in').to('mm').scalar;
        expect(Math.abs(Length.of(sixtyFourths, 64, 'in').mm / theirs - 1)).toBeLessThanOrEqual(DOUBLE);
      }),
      { seed: 914, numRuns: 2000 },
    );
  });
});

type Row = { readonly sixtyFourths: number; readonly mmExact: string; readonly halfUp: readonly string[] };

/** All 64 fractions of an inch, computed outside this program in exact arithmetic. */
const data = new URL('data/sixty-fourths.json', import.meta.url);

describe('against the table of all sixty-fourths', () => {
  const rows: readonly Row[] = JSON.parse(readFileSync(data, 'utf8')).rows;

  it('has 64 rows, each exact', () => {
    expect(rows).toHaveLength(64);
    for (const { sixtyFourths, mmExact } of rows) {
      expect(printDecimal(Length.of(sixtyFourths, 64, 'in'), 'mm', 9)).toBe(trimmed(mmExact));
    }
  });

  it.each([0, 1, 2, 3, 4])('rounds each to %i decimals, half away from zero', (places) => {
    for (const { sixtyFourths, halfUp } of rows) {
      const length = Length.of(sixtyFourths, 64, 'in');
      expect(printDecimal(length, 'mm', places)).toBe(trimmed(halfUp[places] ?? ''));
      expect(printDecimal(Length.zero.minus(length), 'mm', places).replace('−', '')).toBe(
        trimmed(halfUp[places] ?? ''),
      );
    }
  });
});

/** We print no trailing zeros. */
function trimmed(decimal: string): string {
  return decimal.includes('.') ? decimal.replace(/\.?0+$/u, '') : decimal;
}
