import type { Length, Unit } from '../../measure/length.ts';
import { parseDistance, parseSizes, type Reading, VULGAR } from '../../measure/notation.ts';
import { turnWithin } from '../../measure/round.ts';
import type { Units } from '../../measure/ruler-unit.ts';
import { BETWEEN_WORDS } from '../../measure/unit-words.ts';
import type { AtSize, AtVolume } from '../sizes-as-written.ts';
import type { At } from '../source.ts';
import type { Money } from '../stock.ts';
import type { YamlNode } from '../yaml/yaml-node.ts';
import { made, taken, textSchema, type Value } from './grammar.ts';
import { type Reader, refuse, shown, unitAt } from './reader.ts';

const MONEY = /^\p{Sc}?\s*(\d{1,9})(?:\.(\d{1,4})|,(\d{1,2}))?\s*\p{Sc}?$/u;

/** Any text. */
export const asText: Value<At<string>> = taken(textSchema(), ({ node, spot, reader }) =>
  node.kind === 'text' && node.text.trim() !== ''
    ? { value: node.text.trim(), at: node.at }
    : refuse(node, spot.key, 'a text', reader),
);

/** A text that fits a pattern; `expected` says it in words. */
export function asMatch<T>(
  expected: string,
  pattern: RegExp,
  make: (match: RegExpExecArray) => T | undefined,
): Value<At<T>> {
  return taken(textSchema(pattern), ({ node, spot, reader }) => {
    const match = node.kind === 'text' ? pattern.exec(node.text.trim()) : null;
    const value = match ? make(match) : undefined;
    return value === undefined ? refuse(node, spot.key, expected, reader) : { value, at: node.at };
  });
}

/** One of a few words. */
export function asChoice<T extends string>(choices: readonly T[]): Value<At<T>> {
  const last = choices.at(-1) ?? '';
  const expected = choices.length > 1 ? `${choices.slice(0, -1).join(', ')} or ${last}` : last;
  const find = (text: string): T | undefined =>
    choices.find((choice) => choice === text.toLowerCase().replace(/\s+/gu, ' '));
  const words = choices.join('|').replaceAll(' ', String.raw`\s+`);
  return {
    ...asMatch(expected, /^.+$/su, ([text]) => find(text)),
    schema: { anyOf: [{ enum: choices }, textSchema(new RegExp(`^(?:${words})$`, 'iu'))] },
  };
}

/** What a number without a unit is in. */
export const asUnit: Value<At<Unit>> = asChoice(['in', 'mm', 'cm'] as const);

/** Which editions are made. */
export const asUnits: Value<At<Units>> = asChoice(['both', 'inch', 'metric'] as const);

/** `yes` or `no` as a person says it. */
export const asYes: Value<At<boolean>> = asMatch(
  'yes or no',
  /^(?:(yes|true|on)|no|false|off)$/iu,
  ([, yes]) => yes !== undefined,
);

/** A whole number of things, from 1; `least` may be 0. */
export function asCount(least: 0 | 1, most: number): Value<At<number>> {
  const count = asMatch(`a whole number from ${least} to ${most}`, /^\d{1,9}$/u, ([digits]) => {
    const value = Number(digits);
    return value >= least && value <= most ? value : undefined;
  });
  return {
    ...count,
    schema: { ...count.schema, type: ['integer', 'string'], minimum: least, maximum: most },
  };
}

/** Minutes: `90`, `90 min`, `12h`, `1h30`. */
export const asMinutes: Value<At<number>> = {
  ...asMatch(
    'minutes, such as 90, or hours, such as 12h',
    /^(?=\d)(?:(\d{1,3})\s*h(?:ours?|rs?)?\.?\s*)?(?:(\d{1,4})\s*(?:m(?:in(?:ute)?s?)?\.?)?)?$/iu,
    ([, hours = '0', minutes = '0']) => {
      const value = Number(hours) * 60 + Number(minutes);
      return value > 0 && value <= 10_000 ? value : undefined;
    },
  ),
};

/** Degrees, brought into 0 ≤ turn < 360. Clockwise; a minus turns the other way. */
export const asTurn: Value<At<number>> = asMatch(
  'degrees, such as 45',
  /^([-−]?)(\d{1,3}(?:[.,]\d{1,6})?)\s*(?:°|deg|degrees)?$/u,
  ([, sign, degrees = '']) => turnWithin((sign ? -1 : 1) * Number(degrees.replace(',', '.'))),
);

/** How one, two or three lengths are written, and what they look like from afar: what is one only the reader knows. */
const LENGTHS: Readonly<Record<1 | 2 | 3, { readonly form: string; readonly pattern: RegExp }>> = {
  1: { form: 'a length, such as 2 1/4', pattern: lengthsPattern(1) },
  2: { form: 'a size, such as 3 x 4', pattern: lengthsPattern(2) },
  3: { form: 'three lengths, such as 3 x 1 x 4', pattern: lengthsPattern(3) },
};

function lengthsPattern(count: 1 | 2 | 3): RegExp {
  const length = String.raw`[\d.${Object.keys(VULGAR).join('')}](?:[^xX×,]|,\d)*`;
  return new RegExp(
    String.raw`^${length}(?:(?:[xX×]|\b(?:${BETWEEN_WORDS.join('|')})\b)\s*${length}){${count - 1}}$`,
    'u',
  );
}

/** What a distance looks like from afar. */
const DISTANCE: RegExp = new RegExp(`^[-−–]?\\s*${lengthsPattern(1).source.slice(1)}`, 'u');

/** A length and the unit it was written in: its own or that of the size it is in, else that of the file. */
type WrittenLength = At<Length> & { readonly unit: Unit };

/** One, two or three lengths, in the order written. */
export function asLengths(count: 1 | 2 | 3): Value<readonly WrittenLength[]> {
  const { form, pattern } = LENGTHS[count];
  const schema = { ...textSchema(pattern), type: count === 1 ? ['string', 'number'] : 'string' };
  return taken(schema, ({ node, spot: { key }, reader }) => {
    if (node.kind !== 'text') return refuse(node, key, form, reader);
    const reading = parseSizes(node.text, unitAt(node.at, reader), count);
    if (reading.ok) {
      return reading.value.map(({ length, unit, start, end }) => ({
        value: length,
        unit,
        at: node.place(start, end),
      }));
    }
    return reportLength(reading, node, { key, count, reader });
  });
}

/** Says why a text is no length, under the characters that make it none. */
function reportLength(
  { problem, start, end }: Extract<Reading<Length>, { ok: false }>,
  node: YamlNode & { readonly kind: 'text' },
  { key, count, reader }: { readonly key: string; readonly count: 1 | 2 | 3; readonly reader: Reader },
): undefined {
  const at = start < end ? node.place(start, end) : node.at;
  reader.report({ rule: 'unreadable-length', at, facts: { text: shown(at), problem, what: key, count } });
}

/** One length. */
export const asLength: Value<At<Length>> = made(asLengths(1), ([length]) => length);

/** How far something lies from an edge: on it, or past it with a minus. */
export const asDistance: Value<At<Length>> = taken(
  { ...textSchema(DISTANCE), type: ['string', 'number'] },
  ({ node, spot: { key }, reader }) => {
    if (node.kind !== 'text') return refuse(node, key, LENGTHS[1].form, reader);
    const reading = parseDistance(node.text, unitAt(node.at, reader));
    return reading.ok
      ? { value: reading.value, at: node.at }
      : reportLength(reading, node, { key, count: 1, reader });
  },
);

/** Width × height. */
export const asSize: Value<AtSize> = made(
  asLengths(2),
  ([width, height], { spot: { at } }) => width && height && { width, height, at, unit: height.unit },
);

/** Three lengths. */
export const asVolume: Value<AtVolume> = made(
  asLengths(3),
  ([first, second, third]) => first && second && third && [first, second, third],
);

/** A day that exists, as `YYYY-MM-DD`. */
export const asDate: Value<At<string>> = made(
  asMatch('a date, such as 2026-12-10', /^(\d{4})-(\d{1,2})-(\d{1,2})$/u, (match) => match),
  ({ value: [text, year = '', month = '', day = ''], at }, { reader }) => {
    const value = [year, month.padStart(2, '0'), day.padStart(2, '0')].join('-');
    const date = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day)));
    if (date.toISOString().slice(0, 10) === value) return { value, at };
    reader.report({ rule: 'no-such-date', at, facts: { text } });
    return undefined;
  },
);

/** Whether a reader may be sent to an address: http or https, to some host. */
export function isWebAddress(text: string): boolean {
  return /^https?:\/\/[^\s/]/iu.test(text) && URL.canParse(text);
}

/** An address that a reader may be sent to. */
export const asLink: Value<At<string>> = {
  ...made(asText, (text, { reader }) => {
    if (isWebAddress(text.value)) return text;
    reader.report({ rule: 'unsafe-content', at: text.at, facts: { what: 'link' } });
    return undefined;
  }),
  schema: { type: 'string', pattern: '^[hH][tT][tT][pP][sS]?://[^\\s/]' },
};

/** What goes into a printed code, with what is added to it, in bytes: a code holds 2,331 (ISO/IEC 18004, version 40, level M). */
const LONGEST_PRINTED = 1000;

/** An address that is printed as a code, too. */
export const asPrintedLink: Value<At<string>> = {
  ...made(asLink, (link, { node, spot, reader }) =>
    new TextEncoder().encode(link.value).length > LONGEST_PRINTED
      ? refuse(
          node,
          spot.key,
          `an address of at most ${LONGEST_PRINTED} letters: it is printed as a code`,
          reader,
        )
      : link,
  ),
  schema: asLink.schema,
};

/** A language by its BCP 47 tag, in its usual spelling. */
export const asLanguage: Value<At<string>> = asMatch(
  'a language, such as en or pt-BR',
  /^[a-z]{2,3}(?:-\w+)*$/iu,
  ([tag]) => {
    try {
      return Intl.getCanonicalLocales(tag)[0];
    } catch {
      return undefined;
    }
  },
);

/** `0.45`, `12` or `$0.45`, exactly, in the currency's smallest unit. More decimals than it has are refused. */
export const asMoney: Value<At<Money>> = taken(textSchema(MONEY), ({ node, spot, reader }) => {
  const decimals = reader.moneyDecimals;
  const [, whole, point, comma] = (node.kind === 'text' && MONEY.exec(node.text.trim())) || [];
  const part = point ?? comma ?? '';
  if (whole !== undefined && part.length <= decimals) {
    return { value: { minor: BigInt(whole + part.padEnd(decimals, '0')) }, at: node.at };
  }
  const form =
    decimals === 0 ? 'a whole price, such as 45' : `a price, such as 0.${'45'.padEnd(decimals, '0')}`;
  return refuse(node, spot.key, form, reader);
});
