import {
  dateOfDay,
  dayNumber,
  firstDay,
  firstOfMonth,
  isDayOf,
  isSessionDay,
  monthOf,
  type Repetition,
  repetitionOf,
  type Schedule,
  weekdayOf,
} from '../../project/schedule.ts';
import type { Place } from '../../project/source.ts';
import type { Rule } from '../rule.ts';

type Facts = {
  readonly date: string;
  readonly why: Why;
  /** Where the schedule stands. */
  readonly schedule: Place;
};

export const sessionOffSchedule: Rule<Facts> = {
  severity: 'note',
  summary: 'A session falls on a day of the schedule in `site.yaml`.',
  why: 'If sessions are every third Tuesday, a Wednesday is more often a slip than an exception. The date stays as written; this only points it out.',
  fails: {
    head: 'session: 2026-12-15',
    files: {
      'site.yaml': 'sessions: { every: 3 weeks, on: tuesday, from: 2026-09-08, except: [2026-12-22] }\n',
    },
    blames: '2026-12-15',
  },
  passes: { with: '2026-12-01', insteadOf: '2026-12-15' },
  ownEditionOnly: true,
  *check({ workspace, project }) {
    const { session } = project;
    const { sessions } = workspace.site;
    const why = session && sessions && offSchedule(session.value, sessions);
    if (!why) return;
    yield { at: session.at, facts: { date: session.value, why, schedule: sessions.every.at } };
  },
  say: ({ date, why, schedule }) => ({
    message: `${date} is not on the schedule: ${sayWhy(date, why)}`,
    remedy: 'fix the date, or leave it if this is an extra session',
    notes: [{ message: 'the schedule is here', at: schedule }],
  }),
};

/** Why a date is none of a schedule. */
type Why =
  | { readonly kind: 'left out' }
  /** `nth` of its month, from 0, where the right weekday is not enough. */
  | { readonly kind: 'another day'; readonly nth?: number }
  | { readonly kind: 'too early'; readonly first: string }
  | { readonly kind: 'between'; readonly every: string; readonly first: string };

/** Why a date is none of a schedule; undefined where it is one, or where the schedule cannot be read. */
function offSchedule(date: string, schedule: Schedule): Why | undefined {
  const { every, from, except } = schedule;
  const day = dayNumber(date);
  if (except.some(({ value }) => value === date)) return { kind: 'left out' };
  const repetition = repetitionOf(schedule);
  if (!repetition) return undefined;
  if (!isDayOf(repetition, day)) return { kind: 'another day', ...nthOf(repetition, day) };
  if (!from) return undefined;
  const first = firstDay(repetition, from.value);
  if (isSessionDay(repetition, first, day)) return undefined;
  if (day < first) return { kind: 'too early', first: dateOfDay(first) };
  return { kind: 'between', every: every.value, first: dateOfDay(first) };
}

function nthOf(repetition: Repetition, day: number): { nth?: number } {
  if (repetition.kind === 'weeks' || repetition.weekday !== weekdayOf(day)) return {};
  return { nth: Math.floor((day - firstOfMonth(monthOf(day))) / 7) };
}

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth'];

function sayWhy(date: string, why: Why): string {
  switch (why.kind) {
    case 'left out':
      return 'it leaves that day out';
    case 'another day':
      return `that day is ${why.nth === undefined ? 'a' : `the ${ORDINALS[why.nth]}`} ${weekday(date)}`;
    case 'too early':
      return `it does not begin until ${why.first}`;
    case 'between':
      return `it is every ${why.every} from ${why.first}`;
  }
}

const WEEKDAYS = new Intl.DateTimeFormat('en', { weekday: 'long', timeZone: 'UTC' });

function weekday(date: string): string {
  return WEEKDAYS.format(new Date(`${date}T00:00:00Z`));
}
