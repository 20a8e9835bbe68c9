import fc from 'fast-check';
import { RRule, type Weekday as RuleDay } from 'rrule';
import { describe, expect, it } from 'vitest';
import { readSite } from '../../src/project/reading/read-site.ts';
import type { Schedule } from '../../src/project/schedule.ts';
import {
  dateOfDay,
  dayNumber,
  firstDay,
  isSessionDay,
  monthOf,
  type Repetition,
  readOn,
  repetitionOf,
  weekdayOf,
} from '../../src/project/schedule.ts';
import { sourceFile } from '../../src/project/source.ts';

function scheduleOf(words: string): Schedule {
  const { sessions } = readSite(sourceFile('site.yaml', `sessions: { ${words} }\n`));
  if (!sessions) throw new Error(`no schedule in ${words}`);
  return sessions;
}

function datesOf(words: string, count: number): string[] {
  const schedule = scheduleOf(words);
  const repetition = repetitionOf(schedule);
  if (!repetition || !schedule.from) throw new Error(`no repetition in ${words}`);
  return daysOf(repetition, schedule.from.value, count).map(dateOfDay);
}

function daysOf(repetition: Repetition, from: string, count: number): number[] {
  const days: number[] = [];
  const first = firstDay(repetition, from);
  for (let day = first; days.length < count; day += 1) {
    if (isSessionDay(repetition, first, day)) days.push(day);
  }
  return days;
}

describe('a schedule in words', () => {
  // RFC 5545, 3.8.5.3: the examples whose rule our words can say, with the dates printed there.
  it.each<[string, string[]]>([
    [
      'every: 2 weeks, on: tuesday, from: 1997-09-02',
      ['1997-09-02', '1997-09-16', '1997-09-30', '1997-10-14', '1997-10-28', '1997-11-11', '1997-11-25'],
    ],
    [
      'every: 2 weeks, on: tuesday and thursday, from: 1997-09-02',
      ['1997-09-02', '1997-09-04', '1997-09-16', '1997-09-18', '1997-09-30', '1997-10-02', '1997-10-14'],
    ],
    [
      'every: month, on: first friday, from: 1997-09-05',
      ['1997-09-05', '1997-10-03', '1997-11-07', '1997-12-05', '1998-01-02', '1998-02-06', '1998-03-06'],
    ],
    // "The days are generated as a result of WKST=MO", which is how our weeks begin.
    [
      'every: 2 weeks, on: "tuesday, sunday", from: 1997-08-05',
      ['1997-08-05', '1997-08-10', '1997-08-19', '1997-08-24'],
    ],
  ])('%s', (words, dates) => {
    expect(datesOf(words, dates.length)).toEqual(dates);
  });

  it('takes the day with its rhythm: every other Thursday', () => {
    const said = 'on: thursday, from: 2026-10-02';
    expect(datesOf('every: other thursday, from: 2026-10-02', 4)).toEqual(
      datesOf(`every: 2 weeks, ${said}`, 4),
    );
    expect(datesOf('every: thursday, from: 2026-10-02', 4)).toEqual(datesOf(`every: week, ${said}`, 4));
  });

  it('takes the day from the first date where none is named', () => {
    expect(datesOf('every: 4 weeks, from: 2026-10-15', 3)).toEqual([
      '2026-10-15',
      '2026-11-12',
      '2026-12-10',
    ]);
    expect(datesOf('every: month, from: 2026-10-15', 3)).toEqual(['2026-10-15', '2026-11-19', '2026-12-17']);
    // A fifth Thursday is a last one: no month lacks it.
    expect(datesOf('every: month, from: 2026-10-29', 3)).toEqual(['2026-10-29', '2026-11-26', '2026-12-31']);
  });

  it('begins on the first right day after a wrong first date', () => {
    expect(datesOf('every: 2 weeks, on: thursday, from: 2026-10-02', 2)).toEqual([
      '2026-10-08',
      '2026-10-22',
    ]);
  });

  it.each(['', 'and', 'thursday,', 'first', 'first monday and tuesday', 'thirsday', 'last thursdays friday'])(
    'does not guess at "%s"',
    (text) => {
      expect(readOn(text)).toBeUndefined();
    },
  );
});

const RULE_DAYS: readonly RuleDay[] = [RRule.MO, RRule.TU, RRule.WE, RRule.TH, RRule.FR, RRule.SA, RRule.SU];

/** The same repetition as the rrule package has it. */
function ruleOf(repetition: Repetition, first: number): RRule {
  const { interval } = repetition;
  const dtstart = new Date(`${dateOfDay(first)}T00:00:00Z`);
  if (repetition.kind === 'weeks') {
    const byweekday = repetition.weekdays.map((day) => RULE_DAYS[day] ?? RRule.MO);
    return new RRule({ freq: RRule.WEEKLY, interval, byweekday, dtstart, wkst: RRule.MO, count: 12 });
  }
  const day = (RULE_DAYS[repetition.weekday] ?? RRule.MO).nth(repetition.ordinal);
  return new RRule({ freq: RRule.MONTHLY, interval, byweekday: [day], dtstart, count: 12 });
}

describe('any schedule', () => {
  const weekday = fc.integer({ min: 0, max: 6 }).map(weekdayOf);
  const repetition: fc.Arbitrary<Repetition> = fc.oneof(
    fc.record({
      kind: fc.constant('weeks' as const),
      interval: fc.integer({ min: 1, max: 8 }),
      weekdays: fc.uniqueArray(weekday, { minLength: 1, maxLength: 3 }),
    }),
    fc.record({
      kind: fc.constant('months' as const),
      interval: fc.integer({ min: 1, max: 6 }),
      ordinal: fc.constantFrom(...([1, 2, 3, 4, -1] as const)),
      weekday,
    }),
  );
  const from = fc.integer({ min: 0, max: 30_000 }).map(dateOfDay);

  it('has the days that the rrule package finds', () => {
    fc.assert(
      fc.property(repetition, from, (words, date) => {
        const expected = ruleOf(words, firstDay(words, date)).all();
        expect(daysOf(words, date, 12).map(dateOfDay)).toEqual(
          expected.map((day) => day.toISOString().slice(0, 10)),
        );
      }),
      { seed: 7, numRuns: 300 },
    );
  });

  it('counts days as the calendar does', () => {
    fc.assert(
      fc.property(from, (date) => {
        const day = dayNumber(date);
        expect(dateOfDay(day)).toBe(date);
        expect(weekdayOf(day)).toBe((new Date(`${date}T00:00:00Z`).getUTCDay() + 6) % 7);
        expect(monthOf(day)).toBe(Number(date.slice(0, 4)) * 12 + Number(date.slice(5, 7)) - 1);
      }),
      { seed: 8 },
    );
  });
});
