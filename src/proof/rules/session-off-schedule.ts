import { dateOfDay, dayNumber, firstOfMonth, monthOf, weekdayOf } from '../../project/days.ts';
import type { Schedule } from '../../project/model.ts';
import { firstDay, isDayOf, isSessionDay, type Repetition, repetitionOf } from '../../project/schedule.ts';
import { sheetWith } from '../example.ts';
import type { ProofContext, Rule } from '../rule.ts';

const SITE = 'sessions: { every: 2 weeks, on: thursday, from: 2026-10-01, except: [2026-12-24] }\n';

export const sessionOffSchedule: Rule<'session-off-schedule'> = {
  id: 'session-off-schedule',
  severity: 'note',
  summary: 'A session falls on a day of the schedule in `site.yaml`.',
  why: 'With sessions every second Thursday, one dated a Wednesday is more often a slip than an exception. The date stands as written; this only points at it.',
  fails: {
    sheet: sheetWith({ head: 'session: 2026-12-03' }),
    files: { 'site.yaml': SITE },
    blames: '2026-12-03',
  },
  passes: { sheet: sheetWith({ head: 'session: 2026-12-10' }), files: { 'site.yaml': SITE } },
  ownEditionOnly: true,
  check: ({ workspace, project, report }: ProofContext) => {
    const { session } = project;
    const { sessions } = workspace.site;
    if (!session || !sessions) return;
    const why = offSchedule(session.value, sessions);
    if (why === undefined) return;
    report({
      message: `${session.value} is no session of the schedule: ${why}`,
      remedy: 'mend the date, or let it stand if this session is an extra one',
      at: session.at,
      notes: [{ message: 'the schedule stands here', at: sessions.every.at }],
    });
  },
};

/** Why a date is none of a schedule; undefined where it is one, or where the schedule cannot be read. */
function offSchedule(date: string, schedule: Schedule): string | undefined {
  const { every, from, except } = schedule;
  const day = dayNumber(date);
  if (except.some(({ value }) => value === date)) return 'it leaves out that day';
  const repetition = repetitionOf(schedule);
  if (!repetition) return undefined;
  if (!isDayOf(repetition, day)) return `that day is ${ordinal(repetition, day)}${weekday(date)}`;
  if (!from) return undefined;
  const first = firstDay(repetition, from.value);
  if (isSessionDay(repetition, first, day)) return undefined;
  return day < first
    ? `it begins only on ${dateOfDay(first)}`
    : `it is every ${every.value} from ${dateOfDay(first)}`;
}

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth'];

/** `the third `, where the right weekday is not enough; else `a `. */
function ordinal(repetition: Repetition, day: number): string {
  if (repetition.kind === 'weeks' || repetition.weekday !== weekdayOf(day)) return 'a ';
  return `the ${ORDINALS[Math.floor((day - firstOfMonth(monthOf(day))) / 7)]} `;
}

function weekday(date: string): string {
  return new Intl.DateTimeFormat('en', { weekday: 'long', timeZone: 'UTC' }).format(
    new Date(`${date}T00:00:00Z`),
  );
}
