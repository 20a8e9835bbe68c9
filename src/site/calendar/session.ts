import { dateOfDay, dayNumber } from '../../project/days.ts';
import type { Schedule } from '../../project/model.ts';
import type { Property } from './content-line.ts';
import { compact } from './time-zone.ts';

/** When sessions begin, as `site.yaml` says: a time of day, and the zone it is meant in. */
export type Clock = { readonly at?: string | undefined; readonly zone?: string | undefined };

export function clockOf(schedule: Schedule | undefined): Clock {
  return { at: schedule?.at?.value, zone: schedule?.zone?.value };
}

/** What happens on one day, or begins on it. */
export type Session = {
  /** Lasting name of the event. */
  readonly uid: string;
  /** `YYYY-MM-DD`: when what is said of it last changed. */
  readonly changed: string;
  /** `YYYY-MM-DD`. */
  readonly date: string;
  readonly title: string;
  readonly description?: string | undefined;
  readonly address?: string | undefined;
  readonly minutes?: number | undefined;
  readonly tags?: readonly string[];
};

/** `DTSTART` and its like of a day: at the time sessions begin, in its zone or in that of whoever reads it, or all day. */
export function momentProperty(name: string, dates: readonly string[], { at, zone }: Clock): Property {
  if (at === undefined) return [`${name};VALUE=DATE`, dates.map(digits).join(',')];
  const value = dates.map((date) => compact(`${date}T${at}:00`)).join(',');
  return [
    zone === undefined || zone === 'UTC' ? name : `${name};TZID=${zone}`,
    zone === 'UTC' ? utc(value) : value,
  ];
}

/** An event without a time is over at the end of its day; one with a time, after its minutes. */
export function endProperties({ date, minutes }: Session, { at }: Clock): readonly Property[] {
  if (at === undefined) return [['DTEND;VALUE=DATE', digits(dateOfDay(dayNumber(date) + 1))]];
  return minutes === undefined ? [] : [['DURATION', `PT${minutes}M`]];
}

function digits(date: string): string {
  return date.replaceAll('-', '');
}

function utc(values: string): string {
  return values.replace(/\d(?=,|$)/gu, '$&Z');
}
