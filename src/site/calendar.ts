import ICAL from 'ical.js';
import type { Site } from '../project/model.ts';
import { dateOfDay, dayNumber, isSessionDay, type Repetition, type Schedule } from '../project/schedule.ts';
import type { Labels } from '../words/labels.ts';
import { voiceOf } from '../words/voice.ts';
import { changedOn, type ListedProject, UNDATED } from './listed.ts';
import { mailOf, saidMeeting, siteMeeting } from './meeting.ts';
import { absolute, lastingName, siteAddress } from './place.ts';
import { beginSchedule } from './scheduled.ts';
import { type Component, type Property, timeZone, WEEKDAYS } from './time-zone.ts';
import { type Hours, hoursOf } from './when.ts';

/** RFC 5545, 3.1: 75 octets a line; the library does not count the space that continues one. */
ICAL.foldLength = 74;

/** What happens on one day, or begins on it. */
type Session = {
  /** Lasting name of the event. */
  readonly uid: string;
  /** `YYYY-MM-DD`: when what is said of it last changed. */
  readonly changed: string;
  /** `YYYY-MM-DD`. */
  readonly date: string;
  readonly title: string;
  readonly description?: string | undefined;
  readonly address: string | undefined;
  readonly place: string | undefined;
  readonly host: string | undefined;
  readonly contact: string | undefined;
  readonly minutes?: number | undefined;
  readonly tags?: readonly string[];
};

/** A schedule's first day, how it goes on, and the days of it that are left out. */
type Repeat = { readonly first: string; readonly rule: object; readonly without: readonly string[] };

/**
 * `sessions.ics`: every session of the site, and those the schedule promises, until further notice; undefined where
 * there is none at all. Days of the schedule that have a session of their own are left out of it: each day stands once.
 */
export function calendarOf(
  projects: readonly ListedProject[],
  site: Site,
  labels: Labels,
): string | undefined {
  const sessions = projects
    .flatMap((project) => sessionOf(project, site, labels) ?? [])
    .toSorted((a, b) => dayNumber(a.date) - dayNumber(b.date));
  const repeat = site.sessions && repeatOf(site.sessions, sessions);
  if (sessions.length === 0 && !repeat) return undefined;
  const hours = hoursOf(site);
  const days = [...sessions.map(({ date }) => date), ...(repeat ? [repeat.first] : [])].sort();
  const events = sessions.map((session) => eventOf(session, hours));
  const repeated = repeat ? [repeatedEvent(site, repeat, hours)] : [];
  return calendarText(site.title, [...zonesOf(hours, days, repeat !== undefined), ...events, ...repeated]);
}

/** `<slug>.ics`: one session; undefined where the project has none. */
export function sessionCalendar(project: ListedProject, site: Site, labels: Labels): string | undefined {
  const session = sessionOf(project, site, labels);
  const hours = hoursOf(site);
  return (
    session &&
    calendarText(project.title, [...zonesOf(hours, [session.date], false), eventOf(session, hours)])
  );
}

/** The same name in both files: who has the one and takes the other has no session twice. */
function sessionOf(project: ListedProject, site: Site, labels: Labels): Session | undefined {
  const { slug, title, summary, session, minutes, tags } = project;
  if (session === undefined) return undefined;
  const address = absolute(site, `${slug}/`);
  const sheet = address && voiceOf(labels).say('site-event-sheet', { address });
  const { place, host, contact } = saidMeeting(project, site);
  const description = [summary, sheet].filter((line) => line !== undefined).join('\n');
  return {
    uid: lastingName(site, `session ${slug}`),
    changed: changedOn(project),
    date: session,
    title: `${title} – ${site.title}`,
    description,
    address,
    place,
    host,
    contact,
    minutes,
    tags,
  };
}

/** Undefined where the schedule does not say on which day it begins, nor any session. */
function repeatOf(schedule: Schedule, sessions: readonly Session[]): Repeat | undefined {
  const taken = sessions.map(({ date }) => date);
  const begun = beginSchedule(schedule, taken);
  if (!begun) return undefined;
  const { repetition, first } = begun;
  const without = [...new Set([...schedule.except.map(({ value }) => value), ...taken])]
    .filter((date) => isSessionDay(repetition, first, dayNumber(date)))
    .sort();
  return { first: dateOfDay(first), rule: ruleOf(repetition), without };
}

/** A repetition as an `RRULE` (RFC 5545, 3.3.10). */
function ruleOf(repetition: Repetition): object {
  const { kind, interval } = repetition;
  const every = interval === 1 ? {} : { interval };
  if (kind === 'months') {
    return { freq: 'MONTHLY', ...every, byday: `${repetition.ordinal}${WEEKDAYS[repetition.weekday]}` };
  }
  return { freq: 'WEEKLY', ...every, byday: repetition.weekdays.map((day) => WEEKDAYS[day]), wkst: 'MO' };
}

/** Days of somebody's own, each as a whole. */
export function dayCalendar(
  name: string,
  days: readonly Pick<Session, 'uid' | 'date' | 'title' | 'description'>[],
): string {
  const unsaid = { address: undefined, place: undefined, host: undefined, contact: undefined };
  return calendarText(
    name,
    days.map((day) => eventOf({ ...unsaid, ...day, changed: UNDATED }, {})),
  );
}

function calendarText(name: string, components: readonly Component[]): string {
  return ICAL.stringify([
    'vcalendar',
    [
      ['version', {}, 'text', '2.0'],
      ['prodid', {}, 'text', '-//Sheetwright//Sessions//EN'],
      ['calscale', {}, 'text', 'GREGORIAN'],
      ...['name', 'x-wr-calname'].map((key): Property => [key, {}, 'unknown', escaped(name)]),
    ],
    [...components],
  ] satisfies Component);
}

/** Named only where a time is meant in a zone that is not everybody's. */
function zonesOf({ at, zone }: Hours, days: readonly string[], isEndless: boolean): Component[] {
  const [first] = days;
  if (first === undefined || at === undefined || zone === undefined || zone === 'UTC') return [];
  return [timeZone(zone, first, isEndless ? undefined : days.at(-1))];
}

function eventOf(session: Session, hours: Hours, more: Property[] = []): Component {
  const { uid, changed, date, title, description, address, place, tags = [] } = session;
  const properties: Property[] = [
    ['uid', {}, 'text', uid],
    ['dtstamp', {}, 'date-time', `${changed}T00:00:00Z`],
    ['summary', {}, 'text', clean(title)],
    ...given('description', 'text', description ? [clean(description)] : []),
    ...given('location', 'text', place ? [clean(place)] : []),
    ...organizerOf(session),
    ...given('url', 'uri', address ? [address] : []),
    ...given('categories', 'text', tags.map(clean)),
    momentsOf('dtstart', [date], hours),
    ...endOf(session, hours),
    ...more,
  ];
  return ['vevent', properties, []];
}

/** RFC 5545: an organizer has a mail address (3.8.4.3); whoever is to be asked otherwise is a contact (3.8.4.2). */
function organizerOf({ host, contact }: Session): Property[] {
  const mail = mailOf(contact);
  if (mail !== undefined) return [['organizer', host ? { cn: clean(host) } : {}, 'cal-address', mail]];
  const words = [host, contact].filter((word) => word !== undefined).join(', ');
  return given('contact', 'text', words === '' ? [] : [clean(words)]);
}

function given(name: string, type: string, values: readonly string[]): Property[] {
  return values.length > 0 ? [[name, {}, type, ...values]] : [];
}

function repeatedEvent(site: Site, { first, rule, without }: Repeat, hours: Hours): Component {
  const { place, host, contact } = siteMeeting(site);
  const session: Session = {
    uid: lastingName(site, 'schedule'),
    changed: UNDATED,
    date: first,
    title: site.title,
    address: siteAddress(site),
    place,
    host,
    contact,
  };
  return eventOf(session, hours, [
    ['rrule', {}, 'recur', rule],
    ...(without.length > 0 ? [momentsOf('exdate', without, hours)] : []),
  ]);
}

/** `DTSTART` and its like of some days: at the time sessions begin, in its zone or in that of whoever reads it, or all day. */
function momentsOf(name: string, dates: readonly string[], { at, zone }: Hours): Property {
  if (at === undefined) return [name, {}, 'date', ...dates];
  const isUtc = zone === 'UTC';
  const moments = dates.map((date) => `${date}T${at}:00${isUtc ? 'Z' : ''}`);
  return [name, zone === undefined || isUtc ? {} : { tzid: zone }, 'date-time', ...moments];
}

/** An event without a time is over at the end of its day; one with a time, after its minutes. */
function endOf({ date, minutes }: Session, { at }: Hours): Property[] {
  if (at === undefined) return [['dtend', {}, 'date', dateOfDay(dayNumber(date) + 1)]];
  return minutes === undefined ? [] : [['duration', {}, 'duration', `PT${minutes}M`]];
}

/** A text of a property that the library has no type for. */
function escaped(text: string): string {
  return ICAL.stringify.value(clean(text), 'text', ICAL.design.icalendar, false);
}

/** A text without the control characters that no calendar may hold. */
function clean(text: string): string {
  return text.replace(/\r\n?/gu, '\n').replace(/[^\P{Cc}\n\t]/gu, '');
}
