import type { Length, Unit } from './length.ts';
import { VULGAR } from './notation.ts';
import { nearMark, roundHalfAway, rulerMark } from './round.ts';
import type { MetricUnit } from './ruler-unit.ts';
import type { Size, Volume } from './size.ts';

/** `11/16` typed plainly, or `¼` and `11⁄16` as set type. */
type FractionStyle = 'plain' | 'set';

/** An inch measurement as a ruler shows it, in parts, so that a page can set the fraction properly. */
type RulerInches = {
  readonly negative: boolean;
  readonly whole: bigint;
  /** In lowest terms; numerator zero when there is no fraction. */
  readonly numerator: bigint;
  readonly denominator: bigint;
};

/** The character of each fraction that has one, by `numerator/denominator`. */
const CHARACTER: ReadonlyMap<string, string> = new Map(
  Object.entries(VULGAR).map(([character, [top, bottom]]) => [`${top}/${bottom}`, character]),
);

/** A length in parts, as a ruler shows it. */
export function rulerInches(length: Length): RulerInches {
  const { numerator, denominator } = rulerMark(length, 'in').in('in');
  const magnitude = numerator < 0n ? -numerator : numerator;
  return {
    negative: numerator < 0n,
    whole: magnitude / denominator,
    numerator: magnitude % denominator,
    denominator,
  };
}

/** What stands before a figure that is only near the length: `≈`; nothing where a ruler shows the length itself. */
export function roundedSign(length: Length, unit: 'in' | 'mm'): '≈' | '' {
  return rulerMark(length, unit).equals(length) ? '' : '≈';
}

/** `2 1/4` (plain) or `2¼` (set), without a unit; sixteenths are set with a fraction slash: `2 11⁄16`. */
export function printInches(length: Length, style: FractionStyle): string {
  const { negative, whole, numerator, denominator } = rulerInches(length);
  const sign = negative ? '−' : '';
  if (numerator === 0n) return `${sign}${whole}`;
  const lead = whole === 0n ? '' : `${whole}`;
  const character = style === 'set' ? CHARACTER.get(`${numerator}/${denominator}`) : undefined;
  if (character) return `${sign}${lead}${character}`;
  const slash = style === 'set' ? '⁄' : '/';
  return `${sign}${lead}${lead && ' '}${numerator}${slash}${denominator}`;
}

/** `1/64` or `3 31/64`, where a length is so many whole sixty-fourths: finer than a ruler shows. */
function printSixtyFourths(length: Length): string | undefined {
  const { numerator, denominator } = length.in('in');
  if (64n % denominator !== 0n) return undefined;
  const magnitude = numerator < 0n ? -numerator : numerator;
  const [whole, rest] = [magnitude / denominator, magnitude % denominator];
  const parts = [
    ...(whole > 0n || rest === 0n ? [`${whole}`] : []),
    ...(rest > 0n ? [`${rest}/${denominator}`] : []),
  ];
  return `${numerator < 0n ? '−' : ''}${parts.join(' ')}`;
}

/** A decimal number of `unit` with at most `places` decimals, half away from zero, trailing zeros dropped. */
export function printDecimal(length: Length, unit: Unit, places: number): string {
  const value = length.in(unit);
  const scale = 10n ** BigInt(places);
  const scaled = roundHalfAway({ numerator: value.numerator * scale, denominator: value.denominator });
  const magnitude = (scaled < 0n ? -scaled : scaled).toString().padStart(places + 1, '0');
  const whole = magnitude.slice(0, magnitude.length - places);
  const decimals = places === 0 ? '' : magnitude.slice(-places).replace(/0+$/u, '');
  return `${scaled < 0n ? '−' : ''}${whole}${decimals && `.${decimals}`}`;
}

/** Whole millimeters, or half millimeters where the length is exactly that: `57`, `3.5`. */
export function printMillimeters(length: Length): string {
  return printDecimal(rulerMark(length, 'mm'), 'mm', 1);
}

/** The same in the metric unit named: `57`, `5.7`, half a millimeter as `0.05` of a centimeter. */
export function printMetric(length: Length, unit: MetricUnit): string {
  return unit === 'mm' ? printMillimeters(length) : printDecimal(rulerMark(length, 'mm'), 'cm', 2);
}

/** A length in the unit named, with the unit after it: `2¼ in`, `57 mm`, `5.7 cm`. */
export function printLength(length: Length, unit: Unit, style: FractionStyle = 'plain'): string {
  return `${printFigure(length, unit, style)} ${unit}`;
}

function printFigure(length: Length, unit: Unit, style: FractionStyle): string {
  if (unit === 'in') return printInches(length, style);
  return unit === 'mm' ? printMillimeters(length) : printDecimal(length, 'cm', 1);
}

/**
 * A length that was worked out, as it is read off a ruler: `1 5/8 in` or `4.5 mm` where that is all of it, else
 * `≈1 5/8 in`, `≈4.6 mm`. What is under 1/16 in is read to a 32nd.
 */
export function printNear(length: Length, unit: Unit): string {
  if (unit !== 'in') return printTenths(length, unit);
  if (roundedSign(length, 'in') === '') return printLength(length, 'in');
  const fine = printSixtyFourths(length);
  if (fine !== undefined) return `${fine} in`;
  const mark = nearMark(length, 'in');
  return mark.sign === 0 ? 'less than 1/32 in' : `≈${printInches(mark, 'plain')} in`;
}

/** In tenths of a millimeter, and in a project of centimeters in hundredths of one. */
function printTenths(length: Length, unit: 'mm' | 'cm'): string {
  const number = printDecimal(length, unit, unit === 'mm' ? 1 : 2);
  if (number === '0' && length.sign !== 0) return 'less than 0.1 mm';
  return `${10n % length.in('mm').denominator === 0n ? '' : '≈'}${number} ${unit}`;
}

/** `2¼ × 4 in`, or `57 × 102 mm`. */
export function printSize(size: Size | Volume, unit: Unit, style: FractionStyle = 'plain'): string {
  const depth = 'depth' in size ? [size.depth] : [];
  return printSizes([size.width, size.height, ...depth], unit, style);
}

/** Any number of lengths with a multiplication sign between, and the unit once. */
function printSizes(lengths: readonly Length[], unit: Unit, style: FractionStyle = 'plain'): string {
  return `${lengths.map((length) => printFigure(length, unit, style)).join(' × ')} ${unit}`;
}
