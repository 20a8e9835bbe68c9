import { Length, type Unit } from '../../measure/length.ts';
import { printDecimal, printLength, rulerInches } from '../../measure/print.ts';

/**
 * What a person measures a form with. Everything a form works out by itself (an allowance for the paper's
 * thickness, a half, a default) is rounded to it, so that every number to cut and score lies on a ruler whenever
 * the numbers written do.
 */
export type Ruler = {
  readonly unit: 'in' | 'mm';
  /** The finest mark worth aiming at: 1/16 in or 1 mm. */
  readonly step: Length;
  /** The pitch of a usual score board, which derived measurements keep to where they are free to: 1/8 in or 1 mm. */
  readonly groove: Length;
};

const INCHES: Ruler = { unit: 'in', step: Length.of(1, 16, 'in'), groove: Length.of(1, 8, 'in') };
const MILLIMETRES: Ruler = { unit: 'mm', step: Length.of(1, 1, 'mm'), groove: Length.of(1, 1, 'mm') };

export function rulerOf(unit: Unit): Ruler {
  return unit === 'in' ? INCHES : MILLIMETRES;
}

/** A usual measurement, so many inches; on a metric ruler the nearest whole millimetres: 1/2 in is 13 mm there. */
export function usual({ unit, step }: Ruler, numerator: number, denominator: number): Length {
  const inches = Length.of(numerator, denominator, 'in');
  return unit === 'in' ? inches : roundNearest(inches, step);
}

/** The next multiple of `step` at or above a length. */
export function roundUp(length: Length, step: Length): Length {
  return step.times(-floor(length.times(-1), step));
}

/** The next multiple of `step` at or below a length. */
export function roundDown(length: Length, step: Length): Length {
  return step.times(floor(length, step));
}

/** The nearest multiple of `step`, a half upward. */
export function roundNearest(length: Length, step: Length): Length {
  return roundDown(length.plus(step.half()), step);
}

/** As much of a length as lies on a groove, or where it is too short for one, on the finest mark, or all of it. */
export function onBoard(ruler: Ruler, length: Length): Length {
  const grooved = roundDown(length, ruler.groove);
  if (grooved.sign > 0) return grooved;
  const marked = roundDown(length, ruler.step);
  return marked.sign > 0 ? marked : length;
}

/** A length for a message, in the ruler's unit; a decimal where no mark shows it exactly. */
export function say(ruler: Ruler, length: Length): string {
  if (ruler.unit === 'mm') return `${printDecimal(length, 'mm', 2)} mm`;
  return rulerInches(length).exact ? printLength(length, 'in') : `${printDecimal(length, 'in', 3)} in`;
}

function floor(length: Length, step: Length): bigint {
  const { numerator, denominator } = length.over(step);
  const whole = numerator / denominator;
  return numerator < 0n && whole * denominator !== numerator ? whole - 1n : whole;
}
