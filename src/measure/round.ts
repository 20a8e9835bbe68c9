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

/** What a ruler shows: its finest marks, and those that all else is read to. */
const RULERS: Readonly<Record<'in' | 'mm', { readonly finest: Length; readonly usual: Length }>> = {
  in: { finest: Length.of(1, 32, 'in'), usual: Length.of(1, 16, 'in') },
  mm: { finest: Length.of(1, 2, 'mm'), usual: Length.of(1, 1, 'mm') },
};

/**
 * A length as a ruler of inches or of millimeters shows it: itself where it lies on a 32nd of an inch or a half
 * millimeter, else the nearest 16th or whole millimeter, half away from zero.
 */
export function rulerMark(length: Length, unit: 'in' | 'mm'): Length {
  const { finest, usual } = RULERS[unit];
  return length.isMultipleOf(finest) ? length : usual.times(roundHalfAway(length.over(usual)));
}

/** As `rulerMark`, but what is less than one of the usual marks to the nearest of the finest. */
export function nearMark(length: Length, unit: 'in' | 'mm'): Length {
  const { finest, usual } = RULERS[unit];
  if (!length.abs().lessThan(usual)) return rulerMark(length, unit);
  return finest.times(roundHalfAway(length.over(finest)));
}

/** A floating-point number of millimeters, as folding gives it, as a length: to the nearest 1/`parts` of one. */
export function roundMillimeters(mm: number, parts: number): Length {
  return Length.of(Math.round(mm * parts), parts, 'mm');
}

/** How far floating point strays from a mark of a ruler, and more. */
const ASTRAY: Length = Length.of(1, 100, 'mm');

/**
 * A size as folding gives it, in floating-point millimeters: where the ruler has a mark but for floating point, that;
 * else to a hundredth of a millimeter, finer than any ruler.
 */
export function roundFolded(mm: number, unit: 'in' | 'mm'): Length {
  const length = roundMillimeters(mm, 1000);
  const mark = roundNearest(length, RULERS[unit].finest);
  return mark.minus(length).abs().greaterThan(ASTRAY) ? roundMillimeters(mm, 100) : mark;
}

/** A 64th of an inch. */
const SIXTY_FOURTH: Length = Length.of(1, 64, 'in');

/**
 * Millimeters of the folded model as a length: the mark of a ruler they lie on (to 1/64 in) but for what
 * floating-point numbers are off by, else the nearest 1/1000 mm.
 */
export function foldedLength(mm: number): Length {
  const marked = roundNearest(roundMillimeters(mm, 1_000_000), SIXTY_FOURTH);
  if (Math.abs(mm - marked.mm) < 1e-6) return marked;
  return roundMillimeters(mm, 1000);
}

/** The next mark of a ruler at or above a length: one that all is read to, or the finest. */
export function nextMark(length: Length, unit: 'in' | 'mm', marks: 'usual' | 'finest' = 'usual'): Length {
  return roundUp(length, RULERS[unit][marks]);
}

/** As `roundMillimeters`, outward: never less than what folding gave, but for what floating point adds. */
export function roundOutward(mm: number, parts: number): Length {
  const magnitude = Math.ceil(Math.abs(mm) * parts - 1e-6);
  return Length.of(mm < 0 ? -magnitude : magnitude, parts, 'mm');
}

/** A floating-point number to so many decimals: a coordinate of a drawing, a weight, a time. */
export function roundDecimals(value: number, decimals: number): number {
  const parts = 10 ** decimals;
  const rounded = Math.round(value * parts) / parts;
  return rounded === 0 ? 0 : rounded;
}

/** A ratio to so many decimals, half away from zero, as a number for other programs. */
export function roundRatio({ numerator, denominator }: Ratio, decimals: number): number {
  const parts = 10n ** BigInt(decimals);
  return Number(roundHalfAway({ numerator: numerator * parts, denominator })) / Number(parts);
}

/** Degrees as the same turn from 0 to less than 360, to the six decimals that can be written, without what 360 adds and takes. */
export function turnWithin(degrees: number): number {
  return roundDecimals(((degrees % 360) + 360) % 360, 6) % 360;
}

function floorOf(length: Length, step: Length): bigint {
  const { numerator, denominator } = length.over(step);
  const whole = numerator / denominator;
  return numerator < 0n && whole * denominator !== numerator ? whole - 1n : whole;
}
