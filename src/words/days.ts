import type { Say } from './labels.ts';

/** Setting one up takes a thousand times as long as using it. */
const formats = new Map<string, Intl.DateTimeFormat>();

/** A `YYYY-MM-DD` day in words; only after its weekday may a line end. */
export function dateInWords(date: string, dateStyle: 'full' | 'long', say: Say): string {
  const key = `${say.language} ${dateStyle}`;
  const format = formats.get(key) ?? new Intl.DateTimeFormat(say.language, { dateStyle, timeZone: 'UTC' });
  formats.set(key, format);
  const parts = format.formatToParts(Date.parse(date));
  return parts.map(({ type, value }, index) => partSaid(type, value, parts[index - 1]?.type, say)).join('');
}

function partSaid(
  type: Intl.DateTimeFormatPartTypes,
  value: string,
  before: Intl.DateTimeFormatPartTypes | undefined,
  say: Say,
): string {
  if (type === 'literal' && before !== 'weekday') return value.replace(/\s/gu, '\u00a0');
  // The first of a month is an ordinal in French alone: `1er février`.
  if (type === 'day' && value === '1') return say('first-of-month', { day: value });
  return value;
}

/**
 * A time of day as the language writes it, `6:30 PM` or `18:30 Uhr`, on one line.
 * @param isBefore whether another follows that has the word for both: `18:30 bis 19:45 Uhr`
 */
export function timeInWords(
  format: Intl.DateTimeFormat,
  moment: number,
  say: Say,
  isBefore: boolean = false,
): string {
  const parts = format.formatToParts(moment).filter(({ type }) => type !== 'timeZoneName');
  const [hour, minute] = ['hour', 'minute'].map(
    (type) => parts.find((part) => part.type === type)?.value ?? '',
  );
  const period = parts.find(({ type }) => type === 'dayPeriod');
  if (period)
    return parts
      .map(({ value }) => value)
      .join('')
      .trim()
      .replace(/\s/gu, '\u00a0');
  const time = say('hour-and-minute', { hour: hour ?? '', minute: minute ?? '' });
  return isBefore ? time : say('clock', { time });
}
