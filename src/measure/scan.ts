import { Length, type Unit } from './length.ts';
import { notation, ratioOf, unitOf } from './notation.ts';

/** A measurement found in running text: one length, or a size of several, with where it stands. */
export type Measurement = {
  readonly lengths: readonly Length[];
  readonly unit: Unit;
  readonly start: number;
  readonly end: number;
};

const ONE: string = notation.pointNumber.replace(/\?<\w+>/gu, '?:');
/** In prose a unit may hang on its number by a hyphen: `1/2-inch tape`. */
const ANY_UNIT: string = String.raw`(?:\s*|-)(?:${notation.unit.replace(/\?<\w+>/gu, '?:')})`;
const BETWEEN: string = String.raw`(?:\s*[x×]\s*|\s+by\s+)`;

/** Lengths with `x`, `×` or `by` between, ending in a unit; a unit in between is allowed. A bare number is no measurement. */
const MEASUREMENT: RegExp = new RegExp(
  String.raw`(?<![\w./⁄–-]|\d[,:])(?:(?:${ONE})(?:${ANY_UNIT})?${BETWEEN}){0,2}(?:${ONE})${ANY_UNIT}(?!\w)`,
  'giu',
);
const NUMBER_AND_UNIT: RegExp = new RegExp(
  String.raw`(?:${notation.pointNumber})(?:(?:\s*|-)${notation.unit})?`,
  'giu',
);

/**
 * `10 in the room`: a whole number, and behind the word "in" a word that begins where something is, not how long. "in"
 * is such a word in German and Dutch too: `die 6 in den Umschlag`.
 */
const PLACE_NOT_LENGTH =
  /^(?:an?|the|this|that|these|those|it|its|my|your|our|his|her|their|them|each|every|any|some|one|both|total|half|order|turn|front|place|use|all(?!\s+(?:a?round)\b)|der|das|den|dem|ein|einen|einem|einer|zwei|jede[mnrs]?|beide|de|het|een|twee|elke?|je|jouw)\b/iu;

/** `6 in die Tasche`: a noun in German has a capital, so a `4 in die` stays what cuts circles of that size. */
const GERMAN_PLACE = /^die\s+\p{Lu}/u;

/** Longer than any ribbon on the table: a year before the word "in", say. */
const LONGEST: Length = Length.of(10_000, 1, 'mm');

/** Every measurement with a unit in a text, in order, never overlapping. */
export function scanMeasurements(text: string): Measurement[] {
  return [...text.matchAll(MEASUREMENT)]
    .filter((match) => !namesPlace(match[0], text.slice(match.index + match[0].length)))
    .map((match) => measurementOf(withoutStop(match[0], text, match.index), match.index))
    .filter((measurement) => measurement !== undefined);
}

function namesPlace(match: string, after: string): boolean {
  const next = after.trimStart();
  return /^\d+\s+in$/iu.test(match) && (PLACE_NOT_LENGTH.test(next) || GERMAN_PLACE.test(next));
}

/** The full stop behind `4 in.` ends the sentence, unless the sentence goes on. */
function withoutStop(match: string, text: string, start: number): string {
  if (!match.endsWith('.')) return match;
  const goesOn = /^\s+[\p{Ll}\d(]/u.test(text.slice(start + match.length, start + match.length + 20));
  return goesOn ? match : match.slice(0, -1);
}

function measurementOf(text: string, start: number): Measurement | undefined {
  const numbers = [...text.matchAll(NUMBER_AND_UNIT)].map((match) => match.groups ?? {});
  const unit = unitOf(numbers.at(-1)?.unit);
  if (unit === undefined) return undefined;
  const lengths: Length[] = [];
  for (const number of numbers) {
    const { numerator, denominator } = ratioOf(number);
    if (denominator === 0n) return undefined;
    lengths.push(Length.of(numerator, denominator, unitOf(number.unit) ?? unit));
  }
  if (lengths.some((length) => length.sign === 0 || length.greaterThan(LONGEST))) return undefined;
  return { lengths, unit, start, end: start + text.length };
}
