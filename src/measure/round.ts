import { Length, type Ratio } from './length.ts';

/**
 * Everything that rounds, in one place.
 *
 * A ratio to whole numbers, half away from zero: 12.5 is 13, -12.5 is -13. What is printed is rounded by this rule.
 */
export function roundHalfAway({ numerator, denominator }: Ratio): bigint {
  const magnitude = numerator < 0n ? -numerator : numerator;
  const rounded = (2n * magnitude + denominator) / (2n * denominator);
  return numerator < 0n ? -rounded : rounded;
}

/** The nearest multiple of `step`, half away from zero; never nothing for something: the least is one step. */
export function roundToStep(length: Length, step: Length): Length {
  const rounded = step.times(roundHalfAway(length.over(step)));
  return rounded.sign === 0 && length.sign > 0 ? step : rounded;
}

/** The next multiple of `step` at or above a length. */
export function roundUp(length: Length, step: Length): Length {
  return step.times(-floorOf(length.times(-1), step));
}

/** The next multiple of `step` at or below a length. */
export function roundDown(length: Length, step: Length): Length {
  return step.times(floorOf(length, step));
}

/** The nearest multiple of `step`, a half upward; nothing where that is nearest. */
export function roundNearest(length: Length, step: Length): Length {
  return roundDown(length.plus(step.half()), step);
}

/** A floating-point number of millimeters, as folding gives it, as a length: to the nearest 1/`parts` of one. */
export function roundMillimetres(mm: number, parts: number): Length {
  return Length.of(Math.round(mm * parts), parts, 'mm');
}

/** As `roundMillimetres`, outward: never less than what folding gave, but for what floating point adds. */
export function roundOutward(mm: number, parts: number): Length {
  const magnitude = Math.ceil(Math.abs(mm) * parts - 1e-6);
  return Length.of(mm < 0 ? -magnitude : magnitude, parts, 'mm');
}

function floorOf(length: Length, step: Length): bigint {
  const { numerator, denominator } = length.over(step);
  const whole = numerator / denominator;
  return numerator < 0n && whole * denominator !== numerator ? whole - 1n : whole;
}
