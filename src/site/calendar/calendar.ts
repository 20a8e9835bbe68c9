import { dateOfDay, dayNumber, type Weekday } from '../../project/days.ts';
import type { Schedule } from '../../project/model.ts';
import { firstDay, isSessionDay, type Repetition, repetitionOf } from '../../project/schedule.ts';
import { type Component, componentText, type Property, textValue } from './content-line.ts';
import { type Clock, clockOf, endProperties, momentProperty, type Session } from './session.ts';
import { timeZone } from './time-zone.ts';

/** A session that comes again and again by the schedule, until further notice. */
export type RepeatedSession = Omit<Session, 'date' | 'minutes'> & { readonly schedule: Schedule };

/**
 * A calendar of sessions (RFC 5545). Days of the schedule that have a session of their own are left out of the
 * repeated one, so that each day stands once.
 */
export function calendarText(calendar: {
  readonly name: string;
  readonly schedule: Schedule | undefined;
  readonly sessions: readonly Session[];
  readonly repeated?: RepeatedSession | undefined;
}): string {
  const { name, schedule, sessions, repeated } = calendar;
  const clock = clockOf(schedule);
  const dates = sessions.map(({ date }) => date).sort();
  const repeat = repeated && repetitionParts(repeated, dates);
  const from = [...dates, ...(repeat ? [repeat.first] : [])].sort()[0];
  const zone = clock.at !== undefined && clock.zone !== 'UTC' ? clock.zone : undefined;
  return componentText({
    name: 'VCALENDAR',
    properties: [
      ['VERSION', '2.0'],
      ['PRODID', '-//Sheetwright//Sessions//EN'],
      ['CALSCALE', 'GREGORIAN'],
      ['NAME', textValue(name)],
      ['X-WR-CALNAME', textValue(name)],
    ],
    parts: [
      ...(zone === undefined || from === undefined
        ? []
        : [timeZone(zone, from, repeat ? undefined : dates.at(-1))]),
      ...sessions.map((session) => sessionEvent(session, clock)),
      ...(repeated && repeat ? [repeatedEvent(repeated, repeat, clock)] : []),
    ],
  });
}

/** Whether a schedule comes to any day at all. */
export function isRepeated(repeated: RepeatedSession, sessions: readonly Session[]): boolean {
  return repetitionParts(repeated, sessions.map(({ date }) => date).sort()) !== undefined;
}

function sessionEvent(session: Session, clock: Clock): Component {
  return {
    name: 'VEVENT',
    properties: [
      ...commonProperties(session),
      momentProperty('DTSTART', [session.date], clock),
      ...endProperties(session, clock),
    ],
  };
}

type Repeat = { readonly first: string; readonly rule: string; readonly without: readonly string[] };

/** Undefined where the schedule does not say on which day it begins, nor any session. */
function repetitionParts({ schedule }: RepeatedSession, taken: readonly string[]): Repeat | undefined {
  const from = schedule.from?.value ?? taken[0];
  if (from === undefined) return undefined;
  const repetition = repetitionOf({ ...schedule, from: { value: from, at: schedule.every.at } });
  if (!repetition) return undefined;
  const first = firstDay(repetition, from);
  const without = [...new Set([...schedule.except.map(({ value }) => value), ...taken])]
    .filter((date) => isSessionDay(repetition, first, dayNumber(date)))
    .sort();
  return { first: dateOfDay(first), rule: ruleText(repetition), without };
}

function repeatedEvent(repeated: RepeatedSession, { first, rule, without }: Repeat, clock: Clock): Component {
  return {
    name: 'VEVENT',
    properties: [
      ...commonProperties(repeated),
      momentProperty('DTSTART', [first], clock),
      ...endProperties({ ...repeated, date: first }, clock),
      ['RRULE', rule],
      ...(without.length > 0 ? [momentProperty('EXDATE', without, clock)] : []),
    ],
  };
}

function commonProperties(session: Omit<Session, 'date' | 'minutes'>): readonly Property[] {
  const { uid, changed, title, description, address, tags = [] } = session;
  return [
    ['UID', uid],
    ['DTSTAMP', `${changed.replaceAll('-', '')}T000000Z`],
    ['SUMMARY', textValue(title)],
    ...(description === undefined ? [] : [['DESCRIPTION', textValue(description)] as const]),
    ...(address === undefined ? [] : [['URL', address] as const]),
    ...(tags.length > 0 ? [['CATEGORIES', tags.map(textValue).join(',')] as const] : []),
  ];
}

const WEEKDAYS: Readonly<Record<Weekday, string>> = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'];

/** A repetition as an `RRULE` (RFC 5545 3.3.10). */
export function ruleText(repetition: Repetition): string {
  const { interval } = repetition;
  const days =
    repetition.kind === 'weeks'
      ? repetition.weekdays.map((day) => WEEKDAYS[day]).join(',')
      : `${repetition.ordinal}${WEEKDAYS[repetition.weekday]}`;
  const frequency = repetition.kind === 'weeks' ? 'WEEKLY' : 'MONTHLY';
  const every = interval === 1 ? '' : `;INTERVAL=${interval}`;
  return `FREQ=${frequency}${every};BYDAY=${days}${repetition.kind === 'weeks' ? ';WKST=MO' : ''}`;
}
