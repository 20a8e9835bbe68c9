import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Length, type Unit } from '../../src/measure/length.ts';
import { parseLength, parseSizes } from '../../src/measure/notation.ts';
import {
  printDecimal,
  printInches,
  printLength,
  printSize,
  roundedSign,
  rulerInches,
} from '../../src/measure/print.ts';
import { roundHalfAway } from '../../src/measure/round.ts';

const inches = (numerator: number, denominator = 1): Length => Length.of(numerator, denominator, 'in');
const mm = (numerator: number, denominator = 1): Length => Length.of(numerator, denominator, 'mm');

describe('rounding', () => {
  /**
   * The places where half away from zero, half to even and JavaScript's toFixed part ways (computed exactly). NIST
   * SP 811 B.7.1 rounds a half to the even digit, ISO 80000-1 annex B (from memory) allows either rule; Sheetwright
   * rounds away from zero, as a person with a ruler does.
   */
  it.each<[number, number, number, string, string]>([
    [1, 4, 1, '6.4', 'toFixed says 6.3'],
    [1, 8, 2, '3.18', 'toFixed says 3.17'],
    [1, 16, 3, '1.588', 'toFixed says 1.587'],
    [3, 4, 1, '19.1', 'half to even says 19.0'],
    [3, 8, 2, '9.53', 'half to even says 9.52'],
    [7, 8, 2, '22.23', 'half to even says 22.22'],
    [3, 16, 3, '4.763', 'half to even says 4.762'],
    [7, 16, 3, '11.113', 'half to even says 11.112'],
    [11, 16, 3, '17.463', 'half to even says 17.462'],
    [15, 16, 3, '23.813', 'half to even says 23.812'],
    [1, 32, 4, '0.7938', 'tables made with floats say 0.7937'],
    [9, 32, 4, '7.1438', 'tables made with floats say 7.1437'],
  ])('%i/%i in to %i decimals is %s mm (%s)', (numerator, denominator, places, expected) => {
    expect(printDecimal(inches(numerator, denominator), 'mm', places)).toBe(expected);
  });

  it.each<[bigint, bigint, bigint]>([
    [25n, 2n, 13n],
    [-25n, 2n, -13n],
    [1n, 2n, 1n],
    [-1n, 2n, -1n],
    [1n, 3n, 0n],
    [-1n, 3n, 0n],
    [0n, 7n, 0n],
  ])('%i/%i is %i', (numerator, denominator, expected) => {
    expect(roundHalfAway({ numerator, denominator })).toBe(expected);
  });

  it('rounds once, from the exact value, never in two steps', () => {
    // 0.0449 in two steps would be 0.045, then 0.05.
    expect(printDecimal(mm(449, 10_000), 'mm', 1)).toBe('0');
    expect(printDecimal(mm(12_449, 10_000), 'mm', 1)).toBe('1.2');
  });
});

describe('inches on a ruler', () => {
  it.each<[Length, string, string]>([
    [inches(9, 4), '2 1/4', '2¼'],
    [inches(1, 4), '1/4', '¼'],
    [inches(43, 16), '2 11/16', '2 11⁄16'],
    [inches(11, 16), '11/16', '11⁄16'],
    [inches(1, 32), '1/32', '1⁄32'],
    [inches(3), '3', '3'],
    [inches(-9, 4), '−2 1/4', '−2¼'],
    [Length.zero, '0', '0'],
    [inches(1, 64), '0', '0'],
    [mm(57), '2 1/4', '2¼'],
    [mm(100), '3 15/16', '3 15⁄16'],
  ])('%s is %s, set as %s', (length, plain, set) => {
    expect(printInches(length, 'plain')).toBe(plain);
    expect(printInches(length, 'set')).toBe(set);
  });

  it('says whether it had to round', () => {
    expect(roundedSign(inches(5, 32), 'in')).toBe('');
    expect(roundedSign(inches(5, 64), 'in')).toBe('≈');
    expect(roundedSign(mm(57), 'in')).toBe('≈');
  });

  it('rounds to the nearest sixteenth and never by more than a thirty-second', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40_000 }), fc.integer({ min: 1, max: 97 }), (top, bottom) => {
        const length = inches(top, bottom);
        const { whole, numerator, denominator } = rulerInches(length);
        const shown = Length.of(whole * denominator + numerator, denominator, 'in');
        expect(shown.minus(length).abs().greaterThan(inches(1, 32))).toBe(false);
        expect(numerator < denominator && (numerator === 0n || numerator % 2n === 1n)).toBe(true);
      }),
      { seed: 16, numRuns: 1000 },
    );
  });
});

describe('units', () => {
  it.each<[Length, Unit, string]>([
    [inches(9, 4), 'in', '2 1/4 in'],
    [inches(9, 4), 'mm', '57 mm'],
    [inches(9, 4), 'cm', '5.7 cm'],
    [mm(7, 2), 'mm', '3.5 mm'],
    [mm(13, 4), 'mm', '3 mm'],
    [mm(7, 1), 'cm', '0.7 cm'],
  ])('%s in %s is %s', (length, unit, expected) => {
    expect(printLength(length, unit)).toBe(expected);
  });

  it('prints a size with its unit once', () => {
    const size = { width: inches(9, 4), height: inches(4) };
    expect(printSize(size, 'in', 'set')).toBe('2¼ × 4 in');
    expect(printSize(size, 'mm')).toBe('57 × 102 mm');
    expect(printSize({ ...size, depth: inches(1) }, 'in')).toBe('2 1/4 × 4 × 1 in');
    expect(printSize({ width: inches(1), height: inches(2), depth: inches(3) }, 'in')).toBe('1 × 2 × 3 in');
  });
});

describe('what is printed can be read back as the very same length', () => {
  const style = fc.constantFrom('plain' as const, 'set' as const);
  const most = 1000;

  it.each<[string, fc.Arbitrary<Length>, readonly Unit[]]>([
    ['32nds', fc.integer({ min: 1, max: 39 * 32 }).map((count) => inches(count, 32)), ['in']],
    ['16ths', fc.integer({ min: 1, max: 39 * 16 }).map((count) => inches(count, 16)), ['in']],
    ['whole millimeters', fc.integer({ min: 1, max: most }).map((count) => mm(count)), ['mm', 'cm']],
    ['half millimeters', fc.integer({ min: 1, max: 2 * most }).map((count) => mm(count, 2)), ['mm']],
  ])('%s', (_, lengths, units) => {
    fc.assert(
      fc.property(lengths, style, fc.constantFrom(...units), (length, style, unit) => {
        const reading = parseLength(printLength(length, unit, style), unit === 'in' ? 'mm' : 'in');
        expect(reading.ok && reading.value.equals(length)).toBe(true);
        if (unit !== 'in') return;
        const bare = parseLength(printInches(length, style), 'in');
        expect(bare.ok && bare.value.equals(length)).toBe(true);
      }),
      { seed: 32, numRuns: 1500 },
    );
  });

  it('every 32nd up to 12 in and every half millimeter up to 300 mm, none left to chance', () => {
    const wrong: string[] = [];
    const check = (length: Length, unit: Unit): void => {
      for (const style of ['plain', 'set'] as const) {
        const printed = printLength(length, unit, style);
        const reading = parseLength(printed, unit);
        if (!reading.ok || !reading.value.equals(length)) wrong.push(printed);
      }
    };
    for (let count = 1; count <= 12 * 32; count += 1) check(inches(count, 32), 'in');
    for (let count = 1; count <= 600; count += 1) check(mm(count, 2), 'mm');
    expect(wrong).toEqual([]);
  });

  it('sizes too', () => {
    const length = fc.integer({ min: 1, max: 12 * 32 }).map((count) => inches(count, 32));
    fc.assert(
      fc.property(length, length, style, (width, height, style) => {
        const reading = parseSizes(printSize({ width, height }, 'in', style), 'mm', 2);
        expect(reading.ok && reading.value.map((part) => part.length.toString())).toEqual(
          [width, height].map(String),
        );
      }),
      { seed: 8, numRuns: 500 },
    );
  });
});
