import { Length, type Unit } from './length.ts';
import { BETWEEN_WORDS, UNIT_WORDS } from './unit-words.ts';

/** Why a text is no length; the words belong to the rule that reports it. */
export type LengthProblem =
  | 'empty'
  | 'not a length'
  /** `1,000 mm`: a thousand in one language, one and no more in another. */
  | 'comma of a thousand'
  | 'denominator of zero'
  | 'negative'
  | 'zero'
  | 'too long'
  | 'too many sizes'
  | 'too few sizes';

/** A reading, or what stopped it and where: `start` and `end` are offsets within the text given. */
export type Reading<T> = { readonly ok: true; readonly value: T } | Wrong;

type Wrong = {
  readonly ok: false;
  readonly problem: LengthProblem;
  readonly start: number;
  readonly end: number;
};

/** One number of a size, the unit it is in, and where it stands in the text. */
type Part = { readonly length: Length; readonly unit: Unit; readonly start: number; readonly end: number };

/** Nothing made of cardstock at a table is over a meter; more is a slip of the keyboard. */
export const LONGEST: Length = Length.of(1000, 1, 'mm');

/** Vulgar fractions that have a character of their own. */
export const VULGAR: Readonly<Record<string, readonly [number, number]>> = {
  '½': [1, 2],
  '⅓': [1, 3],
  '⅔': [2, 3],
  '¼': [1, 4],
  '¾': [3, 4],
  '⅕': [1, 5],
  '⅖': [2, 5],
  '⅗': [3, 5],
  '⅘': [4, 5],
  '⅙': [1, 6],
  '⅚': [5, 6],
  '⅛': [1, 8],
  '⅜': [3, 8],
  '⅝': [5, 8],
  '⅞': [7, 8],
};
const VULGAR_CHARACTERS = Object.keys(VULGAR).join('');

/** Three digits behind a comma may be thousands. */
const WITH_COMMA: string = String.raw`0,\d+|\d+,\d{1,2}(?!\d)`;

/**
 * One length as people type it, without its sign. In order:
 *   2 1/4 or 2-1/4 or 2 1⁄4   whole, a space or hyphen, then a fraction
 *   1/4                       a fraction alone
 *   2¼ or 2 ¼                 whole and a fraction character, or that character alone
 *   2.25 or .25 or 2          a decimal or a whole number
 *   2,25                      the same in most of Europe
 * each with an optional unit: in, inch, inches, ", ″, ”, '' or mm, cm; in the file also by its word in any of our
 * languages, such as Zoll.
 */
const FRACTION: string = [
  String.raw`(?<whole>\d+)(?:\s*-\s*|\s+)(?<top>\d+)\s*[/⁄]\s*(?<bottom>\d+)`,
  String.raw`(?<loneTop>\d+)\s*[/⁄]\s*(?<loneBottom>\d+)`,
  String.raw`(?:(?<vulgarWhole>\d+)\s*)?(?<vulgar>[${VULGAR_CHARACTERS}])`,
].join('|');
const DECIMAL: string = String.raw`\d+(?:\.\d+)?|\.\d+`;
const NUMBER: string = `${FRACTION}|(?<decimal>${WITH_COMMA}|${DECIMAL})`;
const UNIT: string = String.raw`(?<unit>inches|inch|in\b\.?|["″”]|''|′′|mm\b|cm\b)`;
const LENGTH: RegExp = new RegExp(String.raw`^(?:${NUMBER})\s*${withWords(UNIT, UNIT_WORDS.keys())}?$`, 'iu');
const BETWEEN: RegExp = new RegExp(String.raw`\s*(?:[x×]|\b(?:${BETWEEN_WORDS.join('|')})\b)\s*`, 'giu');

/** The pattern of a unit with further words for it. */
export function withWords(unit: string, words: Iterable<string>): string {
  const alternatives = [...words].map((word) => String.raw`${word}(?!\p{L})|`).join('');
  return unit.replace('(?<unit>', `(?<unit>${alternatives}`);
}

/** The sources of the notation, for a scanner of running text to build on: there a comma may be no decimal. */
export const notation: Readonly<Record<'number' | 'pointNumber' | 'unit', string>> = {
  number: NUMBER,
  pointNumber: `${FRACTION}|(?<decimal>${DECIMAL})`,
  unit: UNIT,
};

/** A sign that a number follows. */
const MINUS: RegExp = new RegExp(String.raw`^\s*[-−–]\s*(?=[\d.${VULGAR_CHARACTERS}])`, 'u');

/** More characters than this are no measurement, and would only make the arithmetic slow. */
const MOST_CHARACTERS = 40;

/**
 * Reads one length. A bare number is in `unit`. Exact from the first character: no floating point.
 * Refuses zero, negative and over-long (more than 1 m) lengths.
 */
export function parseLength(text: string, unit: Unit): Reading<Length> {
  const trimmed = text.trim();
  const start = text.indexOf(trimmed);
  const at = { start, end: start + trimmed.length };
  if (trimmed === '') return { ok: false, problem: 'empty', start: 0, end: text.length };
  if (trimmed.length > MOST_CHARACTERS) return { ok: false, problem: 'not a length', ...at };
  const minus = MINUS.exec(trimmed);
  const match = LENGTH.exec(minus ? trimmed.slice(minus[0].length) : trimmed);
  if (!match?.groups) {
    const comma = /^\d+,\d{3}\D*$/u.test(trimmed);
    return { ok: false, problem: comma ? 'comma of a thousand' : 'not a length', ...at };
  }
  const ratio = ratioOf(match.groups);
  if (ratio.denominator === 0n) return { ok: false, problem: 'denominator of zero', ...at };
  if (ratio.numerator === 0n) return { ok: false, problem: 'zero', ...at };
  if (minus) return { ok: false, problem: 'negative', ...at };
  const length = Length.of(ratio.numerator, ratio.denominator, unitOf(match.groups.unit) ?? unit);
  if (length.greaterThan(LONGEST)) return { ok: false, problem: 'too long', ...at };
  return { ok: true, value: length };
}

/** Reads how far something lies from an edge: nothing is on it, and less than nothing past it. */
export function parseDistance(text: string, unit: Unit): Reading<Length> {
  const [sign] = MINUS.exec(text) ?? [];
  const reading = parseLength(sign ? text.slice(sign.length) : text, unit);
  if (reading.ok) return sign ? { ok: true, value: reading.value.times(-1) } : reading;
  if (reading.problem === 'zero') return { ok: true, value: Length.zero };
  return { ...reading, start: 0, end: text.length };
}

/**
 * Reads `W`, `W x H` or `W × H × D`: `count` lengths with `x`, `×` or a word such as `by` between. A unit holds for every number that
 * has none of its own (`2¼ × 4 in`, `57 mm × 102`); of two the last.
 */
export function parseSizes(text: string, unit: Unit, count: 1 | 2 | 3): Reading<readonly Part[]> {
  const whole = { start: 0, end: text.length };
  if (count > 1 && text.length > count * (MOST_CHARACTERS + 10)) {
    return { ok: false, problem: 'not a length', ...whole };
  }
  const pieces = count === 1 ? [{ text, start: 0 }] : splitSizes(text);
  if (pieces.length !== count) {
    if (pieces.length === 1) {
      const only = parseLength(text, unit);
      if (!only.ok) return only;
    }
    return { ok: false, problem: pieces.length > count ? 'too many sizes' : 'too few sizes', ...whole };
  }
  const units = pieces.map((piece) => writtenUnit(piece.text));
  const shared = units.findLast((each) => each !== undefined) ?? unit;
  const parts: Part[] = [];
  const wrong: Wrong[] = [];
  for (const [index, piece] of pieces.entries()) {
    const reading = parseLength(piece.text, shared);
    if (!reading.ok) {
      wrong.push({ ...reading, start: piece.start + reading.start, end: piece.start + reading.end });
      continue;
    }
    const lead = piece.text.length - piece.text.trimStart().length;
    const start = piece.start + lead;
    const end = start + piece.text.trim().length;
    parts.push({ length: reading.value, unit: units[index] ?? shared, start, end });
  }
  // What cannot be read may hide the unit without which another number is too long.
  const culprit = wrong.find(({ problem }) => problem !== 'too long') ?? wrong[0];
  return culprit ?? { ok: true, value: parts };
}

/** The unit a text ends with, if it names one. */
function writtenUnit(text: string): Unit | undefined {
  const match = LENGTH.exec(text.trim());
  return unitOf(match?.groups?.unit);
}

/** The unit a unit's spelling stands for. */
export function unitOf(spelling: string | undefined): Unit | undefined {
  if (spelling === undefined) return undefined;
  const lower = spelling.toLowerCase();
  return lower === 'mm' || lower === 'cm' ? lower : (UNIT_WORDS.get(lower) ?? 'in');
}

/** The exact ratio the named groups of the notation spell; a denominator of zero is left to the caller. */
export function ratioOf(groups: Readonly<Record<string, string | undefined>>): {
  numerator: bigint;
  denominator: bigint;
} {
  const { whole, top, bottom, loneTop, loneBottom, vulgarWhole, vulgar, decimal } = groups;
  if (top !== undefined && bottom !== undefined) return mixed(whole, BigInt(top), BigInt(bottom));
  if (loneTop !== undefined && loneBottom !== undefined)
    return mixed('', BigInt(loneTop), BigInt(loneBottom));
  const fraction = vulgar === undefined ? undefined : VULGAR[vulgar];
  if (fraction) return mixed(vulgarWhole, BigInt(fraction[0]), BigInt(fraction[1]));
  const [before = '', after = ''] = (decimal ?? '0').split(/[.,]/u);
  return { numerator: BigInt(`${before}${after}` || '0'), denominator: 10n ** BigInt(after.length) };
}

function mixed(
  whole: string | undefined,
  top: bigint,
  bottom: bigint,
): { numerator: bigint; denominator: bigint } {
  return { numerator: BigInt(whole || '0') * bottom + top, denominator: bottom };
}

function splitSizes(text: string): { text: string; start: number }[] {
  const pieces: { text: string; start: number }[] = [];
  let start = 0;
  for (const separator of text.matchAll(BETWEEN)) {
    pieces.push({ text: text.slice(start, separator.index), start });
    start = separator.index + separator[0].length;
  }
  pieces.push({ text: text.slice(start), start });
  return pieces;
}
