import { Temporal } from 'temporal-polyfill';

/** A component of a calendar and its properties, as jCal has them (RFC 7265). */
export type Component = [name: string, properties: Property[], parts: Component[]];
export type Property = [
  name: string,
  parameters: Readonly<Record<string, string>>,
  type: string,
  ...values: unknown[],
];

/** Monday to Sunday as calendars name them. */
export const WEEKDAYS: readonly string[] = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'];

/** How far ahead the rules of an endless schedule's zone are looked at. What holds that long is written as a rule for good. */
const YEARS_AHEAD = 20;

/**
 * The `VTIMEZONE` of a zone, covering the days from `from` to `to` and, without `to`, all from then on. Its rules are
 * read off the runtime's own time zone data: a calendar program knows no IANA names, only what stands in the file.
 */
export function timeZone(zone: string, from: string, to?: string): Component {
  const first = yearOf(from);
  const end = to === undefined ? undefined : yearOf(to);
  const key = `${zone} ${first} ${end}`;
  const made = zones.get(key) ?? zoneThrough(zone, first, end);
  zones.set(key, made);
  return made;
}

/** The sessions of a year all have the same. */
const zones = new Map<string, Component>();

function zoneThrough(zone: string, first: number, end: number | undefined): Component {
  const last = end ?? first + YEARS_AHEAD - 1;
  // A whole year before, so that what holds on the first day has begun.
  const begin = Temporal.ZonedDateTime.from(`${first - 1}-01-01T00:00:00[${zone}]`);
  const { offset } = begin;
  const runs = runsOf(onsetsFrom(begin, last));
  return [
    'vtimezone',
    [['tzid', {}, 'text', zone]],
    [
      observance('standard', '1970-01-01T00:00:00', offset, offset),
      ...runs.map((run) => runObservance(run, end === undefined ? last : undefined)),
    ],
  ];
}

function yearOf(day: string): number {
  return Temporal.PlainDate.from(day).year;
}

/** A setting of the clocks. */
type Onset = {
  readonly moment: Temporal.Instant;
  /** What the clock shows that is about to be set. */
  readonly wall: Temporal.PlainDateTime;
  /** Distances from UTC: `-05:00`. */
  readonly before: string;
  readonly after: string;
  readonly isForward: boolean;
  /** `1SU` for the first Sunday, `-1SU` for the last: each way its day can be named. */
  readonly names: readonly string[];
};

/** Every setting of the clocks from a moment to the end of a year. */
function onsetsFrom(begin: Temporal.ZonedDateTime, lastYear: number): readonly Onset[] {
  const onsets: Onset[] = [];
  let next = begin.getTimeZoneTransition('next');
  while (next && next.year <= lastYear) {
    onsets.push(onsetAt(next));
    next = next.getTimeZoneTransition('next');
  }
  return onsets;
}

function onsetAt(transition: Temporal.ZonedDateTime): Onset {
  const before = transition.subtract({ nanoseconds: 1 });
  const wall = before.toPlainDateTime().add({ nanoseconds: 1 });
  const weekday = WEEKDAYS[wall.dayOfWeek - 1];
  const nth = Math.ceil(wall.day / 7);
  const isLast = wall.day + 7 > wall.daysInMonth;
  return {
    moment: transition.toInstant(),
    wall,
    before: before.offset,
    after: transition.offset,
    isForward: transition.offsetNanoseconds > before.offsetNanoseconds,
    names: [...(nth < 5 ? [`${nth}${weekday}`] : []), ...(isLast ? [`-1${weekday}`] : [])],
  };
}

/** Onsets of successive years that one rule gives; the last has the names that all of them go by. */
type OnsetRun = { readonly first: Onset; last: Onset };

function runsOf(onsets: readonly Onset[]): readonly OnsetRun[] {
  const runs: OnsetRun[] = [];
  for (const onset of onsets) {
    const run = runs.find(({ last }) => continues(last, onset));
    if (run) run.last = { ...onset, names: commonNames(run.last, onset) };
    else runs.push({ first: onset, last: onset });
  }
  return runs;
}

function continues(last: Onset, onset: Onset): boolean {
  return (
    onset.wall.year === last.wall.year + 1 &&
    onset.wall.month === last.wall.month &&
    onset.wall.toPlainTime().equals(last.wall.toPlainTime()) &&
    onset.before === last.before &&
    onset.after === last.after &&
    commonNames(last, onset).length > 0
  );
}

function commonNames(last: Onset, onset: Onset): readonly string[] {
  return onset.names.filter((name) => last.names.includes(name));
}

/** A run that lasts to the year `lasting` is taken to last for good. */
function runObservance({ first, last }: OnsetRun, lasting: number | undefined): Component {
  const { wall, before, after, isForward } = first;
  const until = last.wall.year === lasting ? {} : { until: last.moment.toString() };
  const rule = { freq: 'YEARLY', bymonth: wall.month, byday: last.names[0], ...until };
  return observance(
    isForward ? 'daylight' : 'standard',
    wall.toString({ smallestUnit: 'second' }),
    before,
    after,
    first === last ? [] : [['rrule', {}, 'recur', rule]],
  );
}

function observance(
  kind: 'standard' | 'daylight',
  onset: string,
  before: string,
  after: string,
  rule: Property[] = [],
): Component {
  const properties: Property[] = [
    ['dtstart', {}, 'date-time', onset],
    ['tzoffsetfrom', {}, 'utc-offset', before],
    ['tzoffsetto', {}, 'utc-offset', after],
    ...rule,
  ];
  return [kind, properties, []];
}
