import type { Schedule } from '../../project/model.ts';
import { sheetWith } from '../example.ts';
import type { ProofContext, Rule } from '../rule.ts';

const SITE = 'sessions: { every: 2 weeks, on: thursday, from: 2026-10-01, except: [2026-12-24] }\n';

export const sessionOffSchedule: Rule = {
  id: 'session-off-schedule',
  severity: 'note',
  summary: 'A session falls on a day of the schedule in `site.yaml`.',
  why: 'With sessions every second Thursday, one dated a Wednesday is more often a slip than an exception. The date stands as written; this only points at it. Schedules in weeks are looked at, no others.',
  fails: {
    sheet: sheetWith({ head: 'session: 2026-12-03' }),
    files: { 'site.yaml': SITE },
    blames: '2026-12-03',
  },
  passes: { sheet: sheetWith({ head: 'session: 2026-12-10' }), files: { 'site.yaml': SITE } },
  ofText: true,
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

const DAYS: readonly string[] = [
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
  'sunday',
];
const DAY_MILLISECONDS = 86_400_000;

/** Why a date is none of a weekly schedule; undefined where it is one, or the schedule is of another kind. */
function offSchedule(date: string, { every, on, from, except }: Schedule): string | undefined {
  const day = dayNumber(date);
  if (except.some(({ value }) => value === date)) return 'it leaves out that day';
  const named = DAYS.filter((name) => on?.value.toLowerCase().includes(name));
  const weekday = DAYS[weekdayOf(day)] ?? '';
  if (named.length > 0 && !named.includes(weekday)) return `that day is a ${capital(weekday)}`;
  const weeks = /^(?:(\d{1,2})\s+)?weeks?$/iu.exec(every.value.trim());
  if (!weeks || !from) return undefined;
  const first = dayNumber(from.value);
  if (day < first) return `it begins only on ${from.value}`;
  const interval = Number(weeks[1] ?? 1);
  const passed = weekOf(day) - weekOf(first);
  return interval > 1 && passed % interval !== 0
    ? `it is every ${interval} weeks from ${from.value}`
    : undefined;
}

function dayNumber(date: string): number {
  return Date.parse(`${date}T00:00:00Z`) / DAY_MILLISECONDS;
}

/** 0 for Monday. Day 0, 1 January 1970, was a Thursday. */
function weekdayOf(day: number): number {
  return (((day + 3) % 7) + 7) % 7;
}

/** Weeks begin on Monday, as RFC 5545 has it when nothing else is said. */
function weekOf(day: number): number {
  return Math.floor((day + 3) / 7);
}

function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1);
}
