import { Length, type Ratio } from '../measure/length.ts';
import { gcd } from '../measure/numbers.ts';

/** As many steps as a length may have so that sums of lengths stay exact. */
const MOST_STEPS = 10n ** 12n;

/** The step of lengths that have no common one of use: what no trimmer could ever show. */
const FINE: Length = Length.of(1, 1_000_000, 'mm');

/**
 * Lengths as whole steps. A kerf, what the blade takes away, is added to every piece and to the sheet: then pieces lie
 * end to end and the sums come out as they do on paper.
 */
export class Ruler {
  readonly step: Length;
  readonly kerf: Length;
  /** Every length is a whole number of steps; otherwise they are rounded. */
  readonly exact: boolean;

  private constructor(step: Length, kerf: Length, exact: boolean) {
    this.step = step;
    this.kerf = kerf;
    this.exact = exact;
  }

  /** The longest step of which all lengths, and the kerf, are multiples. */
  static for(lengths: readonly Length[], kerf: Length): Ruler {
    const all = kerf.sign > 0 ? [...lengths, kerf] : lengths;
    const step = all.reduce(commonStep, Length.zero);
    const exact = all.every((length) => length.over(step).numerator <= MOST_STEPS);
    return new Ruler(exact ? step : FINE, kerf, exact);
  }

  /** The steps a piece, a sheet or a part of it takes, its kerf included. */
  steps(length: Length, rounding: 'up' | 'down'): number {
    const { numerator, denominator } = length.plus(this.kerf).over(this.step);
    const whole = numerator / denominator;
    return Number(rounding === 'up' && whole * denominator < numerator ? whole + 1n : whole);
  }

  /** How long a part of so many steps really is. */
  extent(steps: number): Length {
    return this.offset(steps).minus(this.kerf);
  }

  /** How far from the edge what lies so many steps from it begins. */
  offset(steps: number): Length {
    return this.step.times(steps);
  }
}

function commonStep(one: Length, other: Length): Length {
  if (one.sign === 0) return other;
  const [a, b]: [Ratio, Ratio] = [one.in('mm'), other.in('mm')];
  const divisor = gcd(a.numerator * b.denominator, b.numerator * a.denominator);
  return Length.of(divisor, a.denominator * b.denominator, 'mm');
}
