import { dayNumber, firstOfMonth, monthOf, weekdayOf } from '../../project/days.ts';
import type { Component, Property } from './content-line.ts';
import { offsetsOf, type Transition, transitionsOf, type WallTime, wallTime } from './zone-offset.ts';

/** How far ahead the rules of an endless schedule's zone are looked at. What holds that long is written as a rule for good. */
const YEARS_AHEAD = 20;

/**
 * The `VTIMEZONE` of a zone, covering the days from `from` to `to` and, without `to`, all from then on. Its rules are
 * read off the runtime's own time zone data: a calendar program knows no IANA names, only what stands in the file.
 */
export function timeZone(zone: string, from: string, to?: string): Component {
  const offsets = offsetsOf(zone);
  // A whole year before, so that what holds on the first day has begun.
  const begin = Date.parse(`${Number(from.slice(0, 4)) - 1}-01-01T00:00:00Z`);
  const last = to === undefined ? Number(from.slice(0, 4)) + YEARS_AHEAD : Number(to.slice(0, 4)) + 1;
  const transitions = transitionsOf(offsets, begin, Date.parse(`${last}-01-01T00:00:00Z`));
  const runs = runsOf(transitions.map(onsetOf));
  return {
    name: 'VTIMEZONE',
    properties: [['TZID', zone]],
    parts: [
      observance('STANDARD', '1970-01-01T00:00:00', offsets(begin), offsets(begin)),
      ...runs.map((run) => runObservance(run, to === undefined ? last - 1 : undefined)),
    ],
  };
}

/** A transition by the clock that is about to be set, as calendars name it, and which weekday of the month that is. */
type Onset = Transition & {
  readonly wall: WallTime;
  readonly year: number;
  /** `1SU` for the first Sunday, `-1SU` for the last: each way its date can be named. */
  readonly names: readonly string[];
};

const WEEKDAYS = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'];

function onsetOf(transition: Transition): Onset {
  const wall = wallTime(transition.at, transition.before);
  const day = dayNumber(wall.slice(0, 10));
  const weekday = WEEKDAYS[weekdayOf(day)];
  const isLast = monthOf(day + 7) !== monthOf(day);
  const nth = Math.floor((day - firstOfMonth(monthOf(day))) / 7) + 1;
  const names = [...(nth < 5 ? [`${nth}${weekday}`] : []), ...(isLast ? [`-1${weekday}`] : [])];
  return { ...transition, wall, year: Number(wall.slice(0, 4)), names };
}

/** Onsets of successive years that one rule gives. */
type Run = readonly [Onset, ...Onset[]];

function runsOf(onsets: readonly Onset[]): readonly Run[] {
  const runs: [Onset, ...Onset[]][] = [];
  for (const onset of onsets) {
    const run = runs.find((each) => continues(each, onset));
    if (run) run.push({ ...onset, names: commonNames(run, onset) });
    else runs.push([onset]);
  }
  return runs;
}

function continues(run: Run, onset: Onset): boolean {
  const last = run.at(-1) ?? run[0];
  return (
    onset.year === last.year + 1 &&
    onset.before === last.before &&
    onset.after === last.after &&
    onset.wall.slice(5, 7) === last.wall.slice(5, 7) &&
    onset.wall.slice(11) === last.wall.slice(11) &&
    commonNames(run, onset).length > 0
  );
}

function commonNames(run: Run, onset: Onset): readonly string[] {
  return onset.names.filter((name) => (run.at(-1) ?? run[0]).names.includes(name));
}

/** A run that lasts to the year `lasting` is taken to last for good. */
function runObservance(run: Run, lasting: number | undefined): Component {
  const [first] = run;
  const last = run.at(-1) ?? first;
  const kind = first.after > first.before ? 'DAYLIGHT' : 'STANDARD';
  if (run.length === 1) return observance(kind, first.wall, first.before, first.after);
  const until = last.year === lasting ? '' : `;UNTIL=${compact(wallTime(last.at, 0))}Z`;
  const rule = `FREQ=YEARLY;BYMONTH=${Number(first.wall.slice(5, 7))};BYDAY=${last.names[0]}${until}`;
  return observance(kind, first.wall, first.before, first.after, [['RRULE', rule]]);
}

function observance(
  name: 'STANDARD' | 'DAYLIGHT',
  onset: WallTime,
  before: number,
  after: number,
  more: readonly Property[] = [],
): Component {
  return {
    name,
    properties: [
      ['DTSTART', compact(onset)],
      ['TZOFFSETFROM', offsetText(before)],
      ['TZOFFSETTO', offsetText(after)],
      ...more,
    ],
  };
}

/** `2026-10-15T18:30:00` as `20261015T183000`. */
export function compact(wall: WallTime): string {
  return wall.replace(/[-:]/gu, '');
}

/** `-0500`; seconds only where a zone has them, as before 1900. */
function offsetText(seconds: number): string {
  const [size, sign] = [Math.abs(seconds), seconds < 0 ? '-' : '+'];
  const digits = [Math.floor(size / 3600), Math.floor(size / 60) % 60, size % 60].map((part) =>
    String(part).padStart(2, '0'),
  );
  return `${sign}${digits.slice(0, digits[2] === '00' ? 2 : 3).join('')}`;
}
