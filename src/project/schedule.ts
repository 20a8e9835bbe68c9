import type { At } from './source.ts';

/** `sessions:` of the settings, as written; the calendar makes dates of it. */
export type Schedule = {
  readonly every: At<string>;
  readonly on?: At<string>;
  readonly at?: At<string>;
  readonly zone?: At<string>;
  readonly from?: At<string>;
  /** How many usually come. */
  readonly people?: At<number>;
  readonly except: readonly At<string>[];
};

/** Which of a month's Thursdays: 1 to 4, or -1 for the last one. */
type Ordinal = 1 | 2 | 3 | 4 | -1;

/** The words of `every:` and `on:` understood. */
export type Repetition =
  | { readonly kind: 'weeks'; readonly interval: number; readonly weekdays: readonly Weekday[] }
  | {
      readonly kind: 'months';
      readonly interval: number;
      readonly ordinal: Ordinal;
      readonly weekday: Weekday;
    };

/** `weekday` where it is said at once: `other thursday`. */
type Every = {
  readonly unit: 'week' | 'month';
  readonly interval: number;
  readonly weekday?: Weekday;
};

type On = { readonly weekdays: readonly Weekday[]; readonly ordinal?: Ordinal };

const WEEKDAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];
const ORDINALS: ReadonlyMap<string, Ordinal> = new Map([
  ['first', 1],
  ['second', 2],
  ['third', 3],
  ['fourth', 4],
  ['last', -1],
]);

/** `week`, `2 weeks`, `month`, `3 months`; `other week`, `thursday`, `other thursday`. */
export function readEvery(text: string): Every | undefined {
  const [, number, unit = ''] = /^(?:(\d{1,2}|other)\s+)?(\p{L}+)$/u.exec(text.trim().toLowerCase()) ?? [];
  const interval = number === 'other' ? 2 : Number(number ?? 1);
  const named = unit.replace(/s$/u, '');
  if (interval < 1) return undefined;
  if (named === 'week' || named === 'month') return { unit: named, interval };
  const weekday = WEEKDAYS.indexOf(named);
  const isSaid = weekday >= 0 && (number === undefined || number === 'other');
  return isSaid ? { unit: 'week', interval, weekday: weekday as Weekday } : undefined;
}

/** `thursday`, `tuesday and thursday`; `second thursday`, `last friday`. */
export function readOn(text: string): On | undefined {
  const [first = '', ...others] = text.trim().toLowerCase().split(/\s+/u);
  const ordinal = ORDINALS.get(first);
  const named = ordinal === undefined ? [first, ...others].join(' ') : others.join(' ');
  const weekdays = named
    .split(/\s*(?:,|\band\b)\s*/u)
    .map((name) => WEEKDAYS.indexOf(name.replace(/s$/u, '')));
  if (weekdays.includes(-1)) return undefined;
  const read = { weekdays: [...new Set(weekdays)].sort() as Weekday[] };
  if (ordinal === undefined) return read;
  return weekdays.length === 1 ? { ...read, ordinal } : undefined;
}

/** What `every:` and `on:` say together; undefined where they do not go together. Where `on:` says nothing, `from:` does. */
export function repetitionOf({
  every,
  on,
  from,
}: Pick<Schedule, 'every' | 'on' | 'from'>): Repetition | undefined {
  const often = readEvery(every.value);
  const said: On | undefined = often?.weekday === undefined ? undefined : { weekdays: [often.weekday] };
  const named = on ? readOn(on.value) : (said ?? (from && dayOfFirst(from.value, often)));
  if (!often || !named || (said && `${said.weekdays}` !== `${named.weekdays}`)) return undefined;
  const { interval } = often;
  const [weekday] = named.weekdays;
  if (often.unit === 'week') {
    return named.ordinal === undefined ? { kind: 'weeks', interval, weekdays: named.weekdays } : undefined;
  }
  if (named.ordinal === undefined || weekday === undefined) return undefined;
  return { kind: 'months', interval, ordinal: named.ordinal, weekday };
}

function dayOfFirst(date: string, every: Every | undefined): On {
  const weekdays = [weekdayOf(dayNumber(date))];
  if (every?.unit !== 'month') return { weekdays };
  const nth = Math.ceil(Number(date.slice(8)) / 7);
  return { weekdays, ordinal: nth > 4 ? -1 : (nth as Ordinal) };
}

/** The first day, by number, that a schedule beginning on a date has; dates left out are not looked at. */
export function firstDay(repetition: Repetition, from: string): number {
  let day = dayNumber(from);
  while (!isDayOf(repetition, day)) day += 1;
  return day;
}

/** Whether a day is one of the schedule that has its first on day `first`. */
export function isSessionDay(repetition: Repetition, first: number, day: number): boolean {
  if (day < first || !isDayOf(repetition, day)) return false;
  const passed = repetition.kind === 'weeks' ? weekOf(day) - weekOf(first) : monthOf(day) - monthOf(first);
  return passed % repetition.interval === 0;
}

/** Whether the weekday, and its place in the month, is right; the interval is not looked at. */
export function isDayOf(repetition: Repetition, day: number): boolean {
  const weekday = weekdayOf(day);
  if (repetition.kind === 'weeks') return repetition.weekdays.includes(weekday);
  if (weekday !== repetition.weekday) return false;
  const month = monthOf(day);
  if (repetition.ordinal === -1) return monthOf(day + 7) !== month;
  return Math.floor((day - firstOfMonth(month)) / 7) + 1 === repetition.ordinal;
}

const DAY_MILLISECONDS = 86_400_000;

/** 0 for Monday to 6 for Sunday. */
type Weekday = 0 | 1 | 2 | 3 | 4 | 5 | 6;

/** Days since 1 January 1970 of a `YYYY-MM-DD` day; dates compare and count as whole numbers. */
export function dayNumber(date: string): number {
  return Date.parse(`${date}T00:00:00Z`) / DAY_MILLISECONDS;
}

/** The `YYYY-MM-DD` day that `dayNumber` counts so. */
export function dateOfDay(day: number): string {
  return new Date(day * DAY_MILLISECONDS).toISOString().slice(0, 10);
}

/** Day 0, 1 January 1970, was a Thursday. */
export function weekdayOf(day: number): Weekday {
  return ((((day + 3) % 7) + 7) % 7) as Weekday;
}

/** Weeks begin on Monday, as RFC 5545 has it when nothing else is said. */
function weekOf(day: number): number {
  return Math.floor((day + 3) / 7);
}

/** Months since January of the year 0. */
export function monthOf(day: number): number {
  const [year = 0, month = 1] = dateOfDay(day).split('-').map(Number);
  return year * 12 + month - 1;
}

/** The first day of a month counted by `monthOf`. */
export function firstOfMonth(month: number): number {
  return Date.UTC(Math.floor(month / 12), month % 12, 1) / DAY_MILLISECONDS;
}
