import type { Length, Unit } from '../measure/length.ts';
import { parseLength, parseSizes, type Reading } from '../measure/notation.ts';
import type { AtSize, AtVolume } from './model.ts';
import { type Reader, type ReadValue, refuse, shown } from './reader.ts';
import type { At } from './source.ts';
import type { YamlText } from './yaml-text.ts';

/** Any text. */
export const asText: ReadValue<At<string>> = (node, key, reader) => {
  if (node.kind !== 'text' || node.text.trim() === '') return refuse(node, key, 'a text', reader);
  return { value: node.text.trim(), at: node.at };
};

/** A text that fits a pattern; `expected` says it in words. */
export function asMatch<T>(
  expected: string,
  pattern: RegExp,
  make: (match: RegExpExecArray) => T | undefined,
): ReadValue<At<T>> {
  return (node, key, reader) => {
    const match = node.kind === 'text' ? pattern.exec(node.text.trim()) : null;
    const value = match ? make(match) : undefined;
    return value === undefined ? refuse(node, key, expected, reader) : { value, at: node.at };
  };
}

/** One of a few words. */
export function asChoice<T extends string>(choices: readonly T[]): ReadValue<At<T>> {
  const expected =
    choices.length > 1 ? `${choices.slice(0, -1).join(', ')} or ${choices.at(-1)}` : `${choices[0]}`;
  return asMatch(expected, /^.+$/su, ([text]) =>
    choices.find((choice) => choice === text.toLowerCase().replace(/\s+/gu, ' ')),
  );
}

/** The unit of bare numbers. */
export const asUnit: ReadValue<At<Unit>> = asChoice(['in', 'mm', 'cm'] as const);

/** `yes` or `no` as a person says it. */
export const asYes: ReadValue<At<boolean>> = asMatch(
  'yes or no',
  /^(?:(yes|true|on)|no|false|off)$/iu,
  ([, yes]) => yes !== undefined,
);

/** A whole number of things, from 1; `least` may be 0. */
export function asCount(least: 0 | 1, most: number): ReadValue<At<number>> {
  return asMatch(`a whole number from ${least} to ${most}`, /^\d{1,9}$/u, ([digits]) => {
    const count = Number(digits);
    return count >= least && count <= most ? count : undefined;
  });
}

/** Degrees, brought into 0 ≤ turn < 360. Clockwise; a minus turns the other way. */
export const asTurn: ReadValue<At<number>> = asMatch(
  'degrees, such as 45',
  /^([-−]?)(\d{1,3}(?:\.\d{1,6})?)\s*(?:°|deg|degrees)?$/u,
  ([, sign, degrees]) => ((((sign ? -1 : 1) * Number(degrees)) % 360) + 360) % 360,
);

/** One length; `what` it is of is the key. */
export const asLength: ReadValue<At<Length>> = (node, key, reader) => {
  if (node.kind !== 'text') return refuse(node, key, 'a length, such as 2 1/4', reader);
  const reading = parseLength(node.text, reader.unitIn(node.at.file));
  if (!reading.ok) return unreadable(node, reading, { what: key, count: 1 }, reader);
  return { value: reading.value, at: node.at };
};

/** One, two or three lengths, in the order written. */
export function asLengths(count: 1 | 2 | 3): ReadValue<readonly At<Length>[]> {
  return (node, key, reader) => {
    if (count !== 1) return sizes(node, key, count, reader);
    const length = asLength(node, key, reader);
    return length && [length];
  };
}

/** Width × height. */
export const asSize: ReadValue<AtSize> = (node, key, reader) => {
  const [width, height] = sizes(node, key, 2, reader) ?? [];
  return width && height ? { width, height, at: node.at } : undefined;
};

/** Three lengths. */
export const asVolume: ReadValue<AtVolume> = (node, key, reader) => {
  const [first, second, third] = sizes(node, key, 3, reader) ?? [];
  return first && second && third ? [first, second, third] : undefined;
};

function sizes(
  node: Parameters<typeof asSize>[0],
  key: string,
  count: 2 | 3,
  reader: Reader,
): At<Length>[] | undefined {
  if (node.kind !== 'text') {
    return refuse(
      node,
      key,
      count === 2 ? 'a size, such as 3 x 4' : 'three lengths, such as 3 x 1 x 4',
      reader,
    );
  }
  const reading = parseSizes(node.text, reader.unitIn(node.at.file), count);
  if (!reading.ok) return unreadable(node, reading, { what: key, count }, reader);
  return reading.value.map(({ length, start, end }) => ({ value: length, at: node.place(start, end) }));
}

function unreadable(
  node: YamlText,
  { problem, start, end }: Extract<Reading<unknown>, { ok: false }>,
  wanted: { readonly what: string; readonly count: 1 | 2 | 3 },
  reader: Reader,
): undefined {
  const at = start < end ? node.place(start, end) : node.at;
  reader.report({ rule: 'unreadable-length', at, facts: { text: shown(at), problem, ...wanted } });
}

/** A day that exists, as `YYYY-MM-DD`. */
export const asDate: ReadValue<At<string>> = (node, key, reader) => {
  const text = node.kind === 'text' ? node.text.trim() : '';
  const match = /^(\d{4})-(\d{1,2})-(\d{1,2})$/u.exec(text);
  if (!match) return refuse(node, key, 'a date, such as 2026-12-10', reader);
  const [year, month, day] = match.slice(1).map(Number);
  const date = new Date(Date.UTC(year ?? 0, (month ?? 0) - 1, day));
  const value = `${match[1]}-${match[2]?.padStart(2, '0')}-${match[3]?.padStart(2, '0')}`;
  if (date.toISOString().slice(0, 10) !== value) {
    reader.report({ rule: 'no-such-date', at: node.at, facts: { text } });
    return undefined;
  }
  return { value, at: node.at };
};

/** An address that a reader may be sent to: http or https. */
export const asLink: ReadValue<At<string>> = (node, key, reader) => {
  const text = asText(node, key, reader);
  if (!text || (/^https?:\/\/[^\s/]/iu.test(text.value) && URL.canParse(text.value))) return text;
  reader.report({ rule: 'unsafe-content', at: text.at, facts: { what: 'a link that is not http or https' } });
  return undefined;
};

/** A language by its BCP 47 tag, in its usual spelling. */
export const asLanguage: ReadValue<At<string>> = asMatch(
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
