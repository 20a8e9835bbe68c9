import {
  dateOfDay,
  dayNumber,
  firstDay,
  isSessionDay,
  type Repetition,
  repetitionOf,
  type Schedule,
} from '../project/schedule.ts';

/** A schedule that is known to begin: how it goes on, and the number of its first day. */
type Begun = { readonly repetition: Repetition; readonly first: number };

/**
 * A schedule from its first day on: that of `from:`, or else of the first session.
 * @param sessions Days of the projects' sessions, `YYYY-MM-DD`, the earliest first.
 */
export function beginSchedule(schedule: Schedule, sessions: readonly string[]): Begun | undefined {
  const from = schedule.from?.value ?? sessions[0];
  if (from === undefined) return undefined;
  const repetition = repetitionOf({ ...schedule, from: { value: from, at: schedule.every.at } });
  return repetition && { repetition, first: firstDay(repetition, from) };
}

/** Two years, in days: far enough for any schedule to come round again. */
const HORIZON = 731;

/** The next days, `YYYY-MM-DD`, that the schedule promises from `today` on and no project has yet: `most` of them. */
export function openDates(
  schedule: Schedule,
  sessions: readonly string[],
  today: string,
  most: number,
): readonly string[] {
  const begun = beginSchedule(schedule, sessions);
  if (!begun) return [];
  const taken = new Set([...sessions, ...schedule.except.map(({ value }) => value)]);
  const start = Math.max(dayNumber(today), begun.first);
  const dates: string[] = [];
  for (let day = start; day < start + HORIZON && dates.length < most; day += 1) {
    const date = dateOfDay(day);
    if (isSessionDay(begun.repetition, begun.first, day) && !taken.has(date)) dates.push(date);
  }
  return dates;
}
