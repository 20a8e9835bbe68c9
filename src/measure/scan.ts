import { Length, type Unit } from './length.ts';
import { notation, ratioOf, unitOf, withWords } from './notation.ts';

/** A measurement found in running text: one length, or a size of several, with where it stands. */
export type Measurement = {
  readonly lengths: readonly Length[];
  readonly unit: Unit;
  readonly start: number;
  readonly end: number;
};

/** What is a language's own in a measurement. */
export type Spelling = {
  /** A comma divides the whole from its parts: `2,5 cm`. */
  readonly hasComma: boolean;
  /** Words for units, in lowercase letters. */
  readonly units: ReadonlyMap<string, Unit>;
  /** Words between the sides of a size: `4 by 5 cm`. */
  readonly between: readonly string[];
};

const PLAIN: Spelling = { hasComma: false, units: new Map(), between: ['by'] };

/** What finds measurements, and the numbers in one. */
type Patterns = { readonly measurement: RegExp; readonly numberAndUnit: RegExp };

const known: WeakMap<Spelling, Patterns> = new WeakMap<Spelling, Patterns>();

function patternsFor(spelling: Spelling): Patterns {
  const patterns = known.get(spelling) ?? makePatterns(spelling);
  known.set(spelling, patterns);
  return patterns;
}

/**
 * Lengths with `x`, `×` or `by` between, ending in a unit; a unit in between is allowed. A bare number is no
 * measurement. In prose a unit may hang on its number by a hyphen: `1/2-inch tape`. For text in lowercase letters: the
 * engine takes eight times as long to prepare such patterns for both cases, and forgets them after a while.
 */
function makePatterns({ hasComma, units, between }: Spelling): Patterns {
  const number = hasComma ? notation.number : notation.pointNumber;
  const unit = String.raw`(?:\s*|-)${withWords(notation.unit, units.keys())}`;
  const [one, itsUnit] = [number, unit].map((source) => source.replace(/\?<\w+>/gu, '?:'));
  const by = String.raw`(?:\s*[x×]\s*|\s+(?:${between.join('|')})\s+)`;
  const measurement = String.raw`(?<![\w./⁄–-]|\d[,:])(?:(?:${one})(?:${itsUnit})?${by}){0,2}(?:${one})${itsUnit}(?![\w\p{L}])`;
  return {
    measurement: new RegExp(measurement, 'gu'),
    numberAndUnit: new RegExp(`(?:${number})(?:${unit})?`, 'gu'),
  };
}

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
export function scanMeasurements(text: string, spelling: Spelling = PLAIN): Measurement[] {
  const { measurement, numberAndUnit } = patternsFor(spelling);
  return [...lowered(text).matchAll(measurement)]
    .filter((match) => !namesPlace(match[0], text.slice(match.index + match[0].length)))
    .map((match) => {
      const written = withoutStop(match[0], text, match.index);
      const numbers = [...written.matchAll(numberAndUnit)].map(({ groups = {} }) => groups);
      const said = lengthsOf(numbers, spelling);
      return said && { ...said, start: match.index, end: match.index + written.length };
    })
    .filter((found) => found !== undefined);
}

/** In lowercase letters, each where it was: one letter alone would become two, and is in no unit. */
function lowered(text: string): string {
  return text.replaceAll('İ', 'i').toLowerCase();
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

function lengthsOf(
  numbers: readonly Readonly<Record<string, string | undefined>>[],
  { units }: Spelling,
): Pick<Measurement, 'lengths' | 'unit'> | undefined {
  const meant = (word?: string): Unit | undefined => units.get(word?.toLowerCase() ?? '') ?? unitOf(word);
  const unit = meant(numbers.at(-1)?.unit);
  if (unit === undefined) return undefined;
  const lengths: Length[] = [];
  for (const number of numbers) {
    const { numerator, denominator } = ratioOf(number);
    if (denominator === 0n) return undefined;
    lengths.push(Length.of(numerator, denominator, meant(number.unit) ?? unit));
  }
  if (lengths.some((length) => length.sign === 0 || length.greaterThan(LONGEST))) return undefined;
  return { lengths, unit };
}
