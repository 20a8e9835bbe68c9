import { hyphenated } from './hyphens.ts';
import type { Say } from './labels.ts';

/** Words as they begin a sentence. */
export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** How a language sets what people type. All of it follows from its labels, so that a language is one file. */
type Typography = {
  readonly quotes: Quotes;
  /** Quotation marks inside others. */
  readonly inner: Quotes;
  /** What goes before `:`, and before `;`, `!` and `?`: in French a space that does not break. */
  readonly beforeColon: string;
  readonly beforeMark: string;
  /** What is between hour and minute, and after both: `14 h 30`, `18:30 Uhr`. */
  readonly withinTime: string;
  readonly afterTime: string;
};

type Quotes = { readonly open: string; readonly close: string };

const known = new WeakMap<Say, Typography>();

function typographyOf(say: Say): Typography {
  const typography = known.get(say) ?? newTypography(say);
  known.set(say, typography);
  return typography;
}

function newTypography(say: Say): Typography {
  const before = (key: string, mark: string): string =>
    /\s*$/u.exec(say(key).split(mark)[0] ?? '')?.[0] ?? '';
  return {
    quotes: pairOf(say('quoted')),
    inner: pairOf(say('quoted-within')),
    beforeColon: before('labeled', ':'),
    beforeMark: before('exclaimed', '!'),
    withinTime: /\}(.*)\{/u.exec(say('hour-and-minute'))?.[1] ?? '',
    afterTime: say('clock').split('{time}')[1] ?? '',
  };
}

function pairOf(quoted: string): Quotes {
  const [open = '', close = ''] = quoted.split('{words}');
  return { open, close };
}

/** What goes between the members of a list that have commas themselves. */
export function semicolon(say: Say): string {
  return `${typographyOf(say).beforeMark}; `;
}

/** What goes between the members of a list: a semicolon where a comma divides a number, as in `3,5; 4 mm`. */
export function betweenMembers(members: readonly string[], say: Say): string {
  return members.some((member) => /\d,\d/u.test(member)) ? semicolon(say) : ', ';
}

/** Contractions and possessives that may begin a run of text, after a word in italics: `*box*'s`. */
const AFTER_WORD = /^'(?=(?:s|t|d|m|re|ll|ve)\b)/iu;

/** Units that stay with their number. */
const UNIT = /(?<=\d)[ ](?=(?:in|ft|yd|mm|cm|m|lb|oz|g|kg|h|min|%|°)(?![\p{L}\p{N}]))/gu;

/**
 * What a person typed, as a printer of the language sets it: quotation marks and apostrophes, spaces that do not break,
 * and soft hyphens in words too long for a line.
 */
export function typographic(text: string, say: Say): string {
  const typography = typographyOf(say);
  const apostrophes = text.replace(AFTER_WORD, '’').replace(/(?<=[\p{L}\p{N}])'(?=\p{L})/gu, '’');
  const spaced = setSpaces(quoted(apostrophes, typography), typography);
  return hyphenated(setTimes(spaced, typography).replace(UNIT, '\u00a0'), say.language);
}

/** Times of day stay on one line: `14 h 30`, `18:30 Uhr`. */
function setTimes(text: string, { withinTime, afterTime }: Typography): string {
  const [within, after] = [withinTime.trim(), afterTime.trim()];
  const joined =
    within === withinTime
      ? text
      : text.replace(new RegExp(`(?<=\\d)[ ]?${within}[ ]?(?=\\d\\d(?!\\d))`, 'gu'), withinTime);
  return after === '' ? joined : joined.replace(new RegExp(`(?<=\\d)[ ]${after}\\b`, 'gu'), afterTime);
}

function quoted(text: string, { quotes, inner }: Typography): string {
  const double = text.replace(/(?<=^|[\s([–—])"(?=\S)/gu, quotes.open).replace(/"/gu, quotes.close);
  let isOpen = false;
  return double.replace(/'/gu, (_, at: number) => {
    const opens = /(?:^|[\s([–—“„«])$/u.test(double.slice(0, at)) && /^\S/u.test(double.slice(at + 1));
    const mark = opens ? inner.open : isOpen ? inner.close : '’';
    isOpen = opens;
    return mark;
  });
}

function setSpaces(text: string, { quotes, beforeColon, beforeMark }: Typography): string {
  const inQuotes = /\s$/u.test(quotes.open)
    ? text.replace(/(?<=«)[ \u00a0]?(?=\S)/gu, '\u00a0').replace(/(?<=\S)[ \u00a0]?(?=»)/gu, '\u00a0')
    : text;
  const colons = beforeColon === '' ? inQuotes : inQuotes.replace(/(?<=\S)[ ](?=:(?:\s|$))/gu, beforeColon);
  return beforeMark === ''
    ? colons
    : colons.replace(/(?<=[\p{L}\p{N})\]’”»])[ ]?(?=[;!?](?:\s|$|[\u00a0»)]))/gu, beforeMark);
}
