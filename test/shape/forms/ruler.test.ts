import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Length } from '../../../src/measure/length.ts';
import { roundDown, roundNearest, roundUp } from '../../../src/measure/round.ts';
import { leastNesting, nestingAllowance, wallAllowance } from '../../../src/shape/forming/allowance.ts';
import { customary, roundToGroove, rulerOf, say } from '../../../src/shape/forming/ruler.ts';
import { inches } from './building.ts';

const INCH = rulerOf('in');
const METRIC = rulerOf('mm');
const HALVES = rulerOf('mm', 'half');
const microns = (count: number): Length => Length.of(count, 1000, 'mm');
const anyLength = fc.integer({ min: -50_000, max: 500_000 }).map(microns);
const anyStep = fc.constantFrom(inches(1, 16), inches(1, 8), microns(1000), microns(500));

describe('rounding to a ruler', () => {
  it('goes to the next mark below, above, or the nearer of both, a half upward', () => {
    fc.assert(
      fc.property(anyLength, anyStep, (length, step) => {
        const [down, near, up] = [roundDown(length, step), roundNearest(length, step), roundUp(length, step)];
        expect([down, near, up].every((each) => each.isMultipleOf(step))).toBe(true);
        expect(down.greaterThan(length)).toBe(false);
        expect(up.lessThan(length)).toBe(false);
        expect(up.minus(down).equals(length.isMultipleOf(step) ? Length.zero : step)).toBe(true);
        expect(near.minus(length).abs().greaterThan(step.half())).toBe(false);
        if (length.minus(down).equals(step.half())) expect(near.equals(up)).toBe(true);
      }),
    );
  });

  it('keeps to a groove, else to a mark, else leaves a length alone', () => {
    expect(String(roundToGroove(INCH, inches(15, 16)))).toBe('7/8 in');
    expect(String(roundToGroove(INCH, inches(3, 32)))).toBe('1/16 in');
    expect(String(roundToGroove(INCH, inches(1, 32)))).toBe('1/32 in');
  });

  it('has usual measurements in inches, and the nearest whole millimeters', () => {
    expect(String(customary(INCH, 3, 4))).toBe('3/4 in');
    // 3/4 in is 19.05 mm exactly, 1/2 in 12.7 mm (1 in = 25.4 mm).
    expect(customary(METRIC, 3, 4).mm).toBe(19);
    expect(customary(METRIC, 1, 2).mm).toBe(13);
    expect(
      [customary(HALVES, 3, 4), customary(HALVES, 1, 2), customary(HALVES, 1, 4)].map(({ mm }) => mm),
    ).toEqual([19, 12.5, 6.5]);
    expect(rulerOf('in', 'half')).toBe(INCH);
  });

  it('says a length as the ruler shows it, else nearly', () => {
    expect([inches(9, 4), inches(1, 100), microns(2500)].map((length) => say(INCH, length))).toEqual([
      '2 1/4 in',
      'less than 1/32 in',
      '≈1/8 in',
    ]);
    expect(say(METRIC, microns(2500))).toBe('2.5 mm');
  });
});

describe('the allowance for a thickness', () => {
  // 80 lb cover 9.5 points (a trade chart, "guide only"), 110 lb index 0.230 mm (JCP K10): cardstock.
  it.each([
    ['80 lb cover', Length.of(95, 10_000, 'in')],
    ['110 lb index', microns(230)],
  ])('is nothing at a wall of %s, and an eighth between parts', (_, caliper) => {
    expect(wallAllowance(INCH, caliper, 2).equals(Length.zero)).toBe(true);
    expect(wallAllowance(METRIC, caliper, 2).equals(Length.zero)).toBe(true);
    for (const tabs of [1, 2] as const) {
      expect(String(nestingAllowance(INCH, caliper, tabs))).toBe('1/8 in');
      expect(nestingAllowance(METRIC, caliper, tabs).mm).toBe(3);
      expect(nestingAllowance(HALVES, caliper, tabs).mm).toBe(3);
    }
  });

  it('is a mark of the ruler at two walls of board, and half of it at one', () => {
    expect(String(wallAllowance(INCH, inches(1, 16), 2))).toBe('1/16 in');
    expect(String(wallAllowance(INCH, inches(1, 16), 1))).toBe('1/16 in');
    expect(String(wallAllowance(INCH, inches(3, 64), 1))).toBe('0 in');
    expect(wallAllowance(METRIC, microns(2000), 2).mm).toBe(2);
    expect(wallAllowance(METRIC, microns(2000), 1).mm).toBe(1);
    expect(wallAllowance(HALVES, microns(1000), 1).mm).toBe(0.5);
  });

  it('always lets a part go over the other', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 50, max: 5000 }).map(microns),
        fc.constantFrom(INCH, METRIC, HALVES),
        fc.constantFrom(1, 2),
        (caliper, ruler, tabs) => {
          const least = leastNesting(caliper, tabs);
          expect(nestingAllowance(ruler, caliper, tabs).greaterThan(least)).toBe(true);
        },
      ),
    );
  });
});
