import { Length, type Unit } from './length.ts';
import { notation, ratioOf, unitOf } from './notation.ts';

/** A measurement found in running text: one length, or a size of several, with where it stands. */
export type Measurement = {
  readonly lengths: readonly Length[];
  readonly unit: Unit;
  readonly start: number;
  readonly end: number;
};

const ONE: string = notation.number.replace(/\?<\w+>/gu, '');
const ANY_UNIT: string = notation.unit.replace(/\?<\w+>/gu, '');

/** Lengths with `x` or `×` between, ending in a unit; a unit in between is allowed. A bare number is no measurement. */
const MEASUREMENT: RegExp = new RegExp(
  String.raw`(?<![\w./⁄-])(?:(?:${ONE})(?:\s*(?:${ANY_UNIT}))?\s*[x×]\s*){0,2}(?:${ONE})\s*(?:${ANY_UNIT})(?!\w)`,
  'giu',
);
const NUMBER_AND_UNIT: RegExp = new RegExp(String.raw`(?:${notation.number})\s*(?:${notation.unit})?`, 'giu');

/** Every measurement with a unit in a text, in order, never overlapping. */
export function scanMeasurements(text: string): Measurement[] {
  const found: Measurement[] = [];
  for (const match of text.matchAll(MEASUREMENT)) {
    const numbers = [...match[0].matchAll(NUMBER_AND_UNIT)];
    const unit = unitOf(numbers.at(-1)?.groups?.unit);
    if (unit === undefined) continue;
    const lengths: Length[] = [];
    for (const number of numbers) {
      const ratio = ratioOf(number.groups ?? {});
      if (ratio.denominator === 0n) break;
      lengths.push(Length.of(ratio.numerator, ratio.denominator, unitOf(number.groups?.unit) ?? unit));
    }
    if (lengths.length !== numbers.length) continue;
    found.push({ lengths, unit, start: match.index, end: match.index + match[0].length });
  }
  return found;
}
