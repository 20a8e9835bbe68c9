import fc from 'fast-check';
import ICAL from 'ical.js';
import rrulePackage from 'rrule';
import { describe, expect, it } from 'vitest';
import { calendarOf, sessionCalendar } from '../../src/site/calendar.ts';
import { labels } from '../handout/sample.ts';
import { listed, siteOf } from './bench.ts';

const { rrulestr } = rrulePackage;

/** A calendar as an independent reader sees it, its zones known only from the file itself. */
function read(text: string): { readonly calendar: ICAL.Component; readonly events: readonly ICAL.Event[] } {
  ICAL.TimezoneService.reset();
  const calendar = new ICAL.Component(ICAL.parse(text) as unknown[]);
  for (const zone of calendar.getAllSubcomponents('vtimezone')) ICAL.TimezoneService.register(zone);
  const events = calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));
  return { calendar, events };
}

function firstOf(event: ICAL.Event, count: number): readonly ICAL.Time[] {
  const iterator = event.iterator();
  const times: ICAL.Time[] = [];
  for (let time = iterator.next(); time && times.length < count; time = iterator.next()) times.push(time);
  return times;
}

function calendar(site: string, ...projects: Parameters<typeof listed>[1][]): string {
  const made = projects.map((more, index) => listed(`project-${index + 1}`, more));
  const text = calendarOf(made, siteOf(site), labels);
  if (text === undefined) throw new Error('there is no calendar');
  return text;
}

function scheduled(words: string, ...projects: Parameters<typeof listed>[1][]): string {
  return calendar(`title: Bench\nsessions: { ${words} }\n`, ...projects);
}

/** What a wall clock in a zone shows at a moment, from the runtime's own time zone data. */
function clockIn(zone: string, moment: Date): string {
  const format = new Intl.DateTimeFormat('sv-SE', { timeZone: zone, dateStyle: 'short', timeStyle: 'short' });
  return format.format(moment);
}

/** RFC 5545, 3.8.5.3: the examples that the words of a schedule can say, with the dates printed there. */
const RFC_EXAMPLES: readonly [string, string, readonly string[]][] = [
  [
    'every other week forever',
    'every: 2 weeks, on: tuesday, at: "09:00", zone: America/New_York, from: 1997-09-02',
    ['1997-09-02', '1997-09-16', '1997-09-30', '1997-10-14', '1997-10-28', '1997-11-11', '1997-11-25'],
  ],
  [
    'every other week on Tue and Thu, 8 occurrences',
    'every: 2 weeks, on: tuesday and thursday, at: "09:00", zone: America/New_York, from: 1997-09-02',
    ['1997-09-02', '1997-09-04', '1997-09-16', '1997-09-18', '1997-09-30', '1997-10-02', '1997-10-14'],
  ],
  [
    'weekly for 10 occurrences',
    'every: week, on: tuesday, at: "09:00", zone: America/New_York, from: 1997-09-02',
    ['1997-09-02', '1997-09-09', '1997-09-16', '1997-09-23', '1997-09-30', '1997-10-07', '1997-10-14'],
  ],
  [
    'first Friday of the month, 10 occurrences',
    'every: month, on: first friday, at: "09:00", zone: America/New_York, from: 1997-09-05',
    ['1997-09-05', '1997-10-03', '1997-11-07', '1997-12-05', '1998-01-02', '1998-02-06', '1998-03-06'],
  ],
];

describe('the examples of RFC 5545', () => {
  it.each(RFC_EXAMPLES)('%s, read back by ical.js', (_, words, dates) => {
    const { events } = read(scheduled(words));
    expect(events).toHaveLength(1);
    const times = events.flatMap((event) => firstOf(event, dates.length));
    expect(times.map((time) => time.toString())).toEqual(dates.map((date) => `${date}T09:00:00`));
    // "9:00 AM EDT" before 26 October 1997, "9:00 AM EST" after it: the local time stays, the offset does not.
    for (const time of times) {
      const summer = time.toString() < '1997-10-26';
      expect(time.toJSDate().toISOString().slice(11, 16)).toBe(
        summer || time.toString() > '1998-04-05' ? '13:00' : '14:00',
      );
    }
  });

  it.each(RFC_EXAMPLES)('%s, its rule read back by rrule', (_, words, dates) => {
    const [, event = ''] = scheduled(words).split('BEGIN:VEVENT');
    const [, rule] = /^(RRULE:.*)\r$/mu.exec(event) ?? [];
    const start = dates[0]?.replaceAll('-', '');
    const read = rrulestr(`DTSTART:${start}T090000Z\n${rule}`).all((_date, index) => index < dates.length);
    expect(read.map((date) => date.toISOString().slice(0, 10))).toEqual(dates);
  });
});

describe('a named time zone', () => {
  // Both halves of the world, half hours, quarter hours, half an hour of summer time, none, and rules no weekday gives.
  it.each([
    'America/Chicago',
    'America/St_Johns',
    'America/Santiago',
    'Europe/Berlin',
    'Europe/London',
    'Europe/Dublin',
    'Australia/Sydney',
    'Australia/Lord_Howe',
    'Pacific/Chatham',
    'Asia/Kolkata',
    'Asia/Tokyo',
    'Asia/Jerusalem',
    'Africa/Casablanca',
    'Africa/Cairo',
  ])('%s: every session of six years is at half past six there', (zone) => {
    const { events } = read(
      scheduled(`every: week, on: thursday, at: "18:30", zone: ${zone}, from: 2026-10-01`),
    );
    const times = events.flatMap((event) => firstOf(event, 312));
    expect(times).toHaveLength(312);
    const wrong = times
      .map((time) => [time.toString(), clockIn(zone, time.toJSDate())] as const)
      .filter(([said, shown]) => said.slice(0, 16) !== shown.replace(' ', 'T'));
    expect(wrong).toEqual([]);
  });

  it("is right for any day of any zone, by the runtime's own time zone data", () => {
    const zones = Intl.supportedValuesOf('timeZone');
    const day = fc
      .integer({ min: 0, max: 365 * 55 })
      .map((days) => new Date(days * 86_400_000).toISOString().slice(0, 10));
    fc.assert(
      fc.property(fc.constantFrom(...zones), day, (zone, session) => {
        const site = siteOf(`title: Bench\nsessions: { every: week, at: "12:00", zone: ${zone} }\n`);
        const { events } = read(sessionCalendar(listed('box', { session }), site, labels) ?? '');
        const [start] = events.map(({ startDate }) => startDate.toJSDate());
        expect(start && clockIn(zone, start)).toBe(`${session} 12:00`);
      }),
      { seed: 31, numRuns: 150 },
    );
  });

  it('is written by the rules that hold there', () => {
    const text = scheduled('every: week, at: "18:30", zone: America/Chicago, from: 2026-10-01');
    // Since the Energy Policy Act of 2005: the second Sunday in March and the first in November, at two o'clock.
    expect(text).toMatch(
      /BEGIN:DAYLIGHT\r\nDTSTART:20250309T020000\r\nTZOFFSETFROM:-0600\r\nTZOFFSETTO:-0500\r\nRRULE:FREQ=YEARLY;BYMONTH=3;BYDAY=2SU\r\n/u,
    );
    expect(text).toMatch(
      /BEGIN:STANDARD\r\nDTSTART:20251102T020000\r\nTZOFFSETFROM:-0500\r\nTZOFFSETTO:-0600\r\nRRULE:FREQ=YEARLY;BYMONTH=11;BYDAY=1SU\r\n/u,
    );
  });

  it('knows the rules that ended: from April to October until 2006', () => {
    const text = scheduled('every: week, at: "18:30", zone: America/New_York, from: 1997-09-02');
    expect(text).toContain('RRULE:FREQ=YEARLY;BYMONTH=4;BYDAY=1SU;UNTIL=20060402T070000Z\r\n');
    expect(text).toContain('RRULE:FREQ=YEARLY;BYMONTH=10;BYDAY=-1SU;UNTIL=20061029T060000Z\r\n');
  });

  it('is left out where it is not needed', () => {
    expect(scheduled('every: week, from: 2026-10-01, at: "18:30"')).not.toContain('TZID');
    expect(scheduled('every: week, from: 2026-10-01, zone: Europe/Berlin')).not.toContain('TZID');
    const utc = scheduled('every: week, from: 2026-10-01, at: "18:30", zone: UTC, except: [2026-10-08]');
    expect(utc).toContain('DTSTART:20261001T183000Z\r\n');
    expect(utc).toContain('EXDATE:20261008T183000Z\r\n');
    expect(utc).not.toContain('TZID');
  });
});

describe('the sessions of a site', () => {
  const WORDS =
    'every: 2 weeks, on: thursday, at: "18:30", zone: America/Chicago, from: 2026-10-01, except: [2026-12-24]';
  const BOX = {
    title: 'Seed box; with lid, and "clip"',
    session: '2026-12-10',
    minutes: 50,
    tags: ['box', 'gift, small'],
  };

  it('stand once a day: one with a project, the others by the schedule, none on a day left out', () => {
    const { events } = read(scheduled(WORDS, BOX, { title: 'Extra', session: '2026-11-03' }));
    expect(events.map(({ summary }) => summary)).toEqual([
      'Extra – Bench',
      'Seed box; with lid, and "clip" – Bench',
      'Bench',
    ]);
    const [extra, box, repeated] = events;
    expect(extra?.startDate.toString()).toBe('2026-11-03T18:30:00');
    expect(box?.startDate.toString()).toBe('2026-12-10T18:30:00');
    expect(box?.duration.toSeconds()).toBe(50 * 60);
    expect(repeated && firstOf(repeated, 6).map((time) => time.toString().slice(0, 10))).toEqual([
      '2026-10-01',
      '2026-10-15',
      '2026-10-29',
      '2026-11-12',
      '2026-11-26',
      '2027-01-07',
    ]);
  });

  it('have what RFC 5545 demands of a calendar and its events', () => {
    const { calendar: root } = read(scheduled(WORDS, BOX));
    expect(root.getFirstPropertyValue('version')).toBe('2.0');
    expect(root.getFirstPropertyValue('prodid')).toBeTruthy();
    const uids = root.getAllSubcomponents('vevent').map((event) => {
      for (const name of ['uid', 'dtstamp', 'dtstart']) expect(event.getAllProperties(name)).toHaveLength(1);
      expect(String(event.getFirstPropertyValue('dtstamp'))).toMatch(/Z$/u);
      return event.getFirstPropertyValue('uid');
    });
    expect(new Set(uids).size).toBe(uids.length);
    for (const zone of root.getAllSubcomponents('vtimezone')) {
      expect(zone.getAllSubcomponents().length).toBeGreaterThan(0);
      for (const part of zone.getAllSubcomponents()) {
        for (const name of ['dtstart', 'tzoffsetfrom', 'tzoffsetto'])
          expect(part.getAllProperties(name)).toHaveLength(1);
      }
    }
  });

  it('keep commas and semicolons of their words, and lie between tags', () => {
    const { events } = read(scheduled(WORDS, BOX));
    const tags = events[0]?.component.getFirstProperty('categories')?.getValues();
    expect(tags).toEqual(['box', 'gift, small']);
  });

  it('have the same name alone as among the others, so that nobody has one twice', () => {
    const site = siteOf(`title: Bench\nurl: https://example.org/bench\nsessions: { ${WORDS} }\n`);
    const project = listed('box', { ...BOX, summary: 'It holds\nsix.' });
    const alone = read(sessionCalendar(project, site, labels) ?? '').events;
    const together = read(calendarOf([project], site, labels) ?? '').events;
    expect(alone).toHaveLength(1);
    expect(alone[0]?.uid).toBe(together[0]?.uid);
    expect(alone[0]?.description).toBe('It holds\nsix.\nThe project sheet: https://example.org/bench/box/');
    expect(alone[0]?.component.getFirstPropertyValue('url')).toBe('https://example.org/bench/box/');
  });

  it('are dated by what was published, never by the clock', () => {
    const revisions = [{ number: 1, date: '2026-11-02', changes: [], recut: [] }];
    expect(scheduled(WORDS, { ...BOX, revisions })).toContain('DTSTAMP:20261102T000000Z');
    expect(scheduled(WORDS, BOX)).toBe(scheduled(WORDS, BOX));
  });

  it('last all day where no time is said', () => {
    const { events } = read(calendar('title: Bench\n', { session: '2026-12-31', minutes: 50 }));
    expect(events.map((event) => [event.startDate.toString(), event.endDate.toString()])).toEqual([
      ['2026-12-31', '2027-01-01'],
    ]);
  });

  it('begin with the first project where the schedule does not say when', () => {
    const { events } = read(
      scheduled('every: 4 weeks', { session: '2026-11-12' }, { session: '2026-10-15' }),
    );
    const repeated = events.at(-1);
    expect(repeated && firstOf(repeated, 2).map(String)).toEqual(['2026-12-10', '2027-01-07']);
  });

  it('are none where there is neither project nor schedule', () => {
    expect(calendarOf([listed('a')], siteOf('title: Bench\n'), labels)).toBeUndefined();
    expect(
      calendarOf([listed('a')], siteOf('sessions: { every: 2 weeks, on: friday }\n'), labels),
    ).toBeUndefined();
    expect(sessionCalendar(listed('a'), siteOf('title: Bench\n'), labels)).toBeUndefined();
  });
});

/** A file's content lines, unfolded and split by the words of RFC 5545, 3.1, with no library. */
function linesOf(text: string): readonly string[] {
  return text.replaceAll('\r\n ', '').split('\r\n').slice(0, -1);
}

describe('where and with whom', () => {
  // RFC 5545: 3.8.1.7 LOCATION, 3.8.4.3 ORGANIZER with CN (3.2.2), 3.8.4.2 CONTACT.
  const of = (settings: string, more: object = {}): readonly string[] => {
    const project = listed('box', { title: 'Box', session: '2026-12-10', ...more });
    return linesOf(sessionCalendar(project, siteOf(`title: Bench\n${settings}`), labels) ?? '');
  };

  it('are the place and the organizer of the event', () => {
    const lines = of('place: Reading room, 12 Harbour Street\nhost: The bench\ncontact: bench@example.org\n');
    expect(lines).toContain('LOCATION:Reading room\\, 12 Harbour Street');
    expect(lines).toContain('ORGANIZER;CN=The bench:mailto:bench@example.org');
  });

  it('are a contact where there is no mail address, and the project has the last word', () => {
    const lines = of('place: Reading room\ncontact: 555 0100\n', { place: 'Garden', host: 'A guest' });
    expect(lines).toContain('LOCATION:Garden');
    expect(lines).toContain('CONTACT:A guest\\, 555 0100');
    expect(lines.some((line) => line.startsWith('ORGANIZER'))).toBe(false);
  });

  it('are in the events of the schedule too', () => {
    const site = siteOf(
      'title: Bench\nplace: Hall\nsessions: { every: week, on: friday, from: 2026-10-02 }\n',
    );
    expect(linesOf(calendarOf([], site, labels) ?? '')).toContain('LOCATION:Hall');
  });
});

describe('the lines of a calendar', () => {
  it('are no longer than 75 octets, and whole again when unfolded, whatever is written', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 400 }), (title) => {
        const project = listed('box', { title, session: '2026-12-10' });
        const text = sessionCalendar(project, siteOf('title: Bench\n'), labels) ?? '';
        expect(text.endsWith('\r\n')).toBe(true);
        for (const line of text.slice(0, -2).split('\r\n')) {
          expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
          expect(line).not.toMatch(/[\r\n]/u);
        }
        const kept = title.replace(/\r\n?/gu, '\n').replace(/[^\P{Cc}\n\t]/gu, '');
        // 3.3.11: a backslash before a backslash, a semicolon or a comma; a line break is \n.
        const written = kept.replace(/[\\;,]/gu, '\\$&').replaceAll('\n', '\\n');
        const lines = linesOf(text);
        for (const name of ['NAME', 'X-WR-CALNAME']) expect(lines).toContain(`${name}:${written}`);
        expect(lines).toContain(`SUMMARY:${written} – Bench`);
        expect(read(text).events[0]?.summary).toBe(`${kept} – Bench`);
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  it('are those of RFC 5545, one by one', () => {
    const words = 'every: month, on: last friday, at: "09:05", zone: Asia/Kolkata, from: 2026-10-01';
    const text = calendar(
      `title: "Bench; one, two"\nurl: https://example.org/\nsessions: { ${words}, except: [2026-12-25] }\n`,
      { session: '2026-10-30', minutes: 90, tags: ['box', 'a, b'], title: 'A \\ B' },
    );
    // 3.3.10 and 3.8.5.3 give the rule, 3.6.5 the zone, 3.8.5.1 the days left out, 3.3.6 the duration.
    expect(linesOf(text).filter((line) => !/^(?:UID|URL|DESCRIPTION):/u.test(line))).toEqual([
      'BEGIN:VCALENDAR',
      'VERSION:2.0',
      'PRODID:-//Sheetwright//Sessions//EN',
      'CALSCALE:GREGORIAN',
      'NAME:Bench\\; one\\, two',
      'X-WR-CALNAME:Bench\\; one\\, two',
      'BEGIN:VTIMEZONE',
      'TZID:Asia/Kolkata',
      'BEGIN:STANDARD',
      'DTSTART:19700101T000000',
      'TZOFFSETFROM:+0530',
      'TZOFFSETTO:+0530',
      'END:STANDARD',
      'END:VTIMEZONE',
      'BEGIN:VEVENT',
      'DTSTAMP:20000101T000000Z',
      'SUMMARY:A \\\\ B – Bench\\; one\\, two',
      'CATEGORIES:box,a\\, b',
      'DTSTART;TZID=Asia/Kolkata:20261030T090500',
      'DURATION:PT90M',
      'END:VEVENT',
      'BEGIN:VEVENT',
      'DTSTAMP:20000101T000000Z',
      'SUMMARY:Bench\\; one\\, two',
      'DTSTART;TZID=Asia/Kolkata:20261030T090500',
      'RRULE:FREQ=MONTHLY;BYDAY=-1FR',
      'EXDATE;TZID=Asia/Kolkata:20261030T090500,20261225T090500',
      'END:VEVENT',
      'END:VCALENDAR',
    ]);
  });

  it.each([
    ['every: week, from: 2026-10-01', 'FREQ=WEEKLY;BYDAY=TH;WKST=MO', '2026-10-01 2026-10-08 2026-10-15'],
    [
      'every: 3 weeks, on: tuesday and friday, from: 2026-10-01',
      'FREQ=WEEKLY;INTERVAL=3;BYDAY=TU,FR;WKST=MO',
      '2026-10-02 2026-10-20 2026-10-23',
    ],
    [
      'every: 2 months, on: second monday, from: 2026-10-01',
      'FREQ=MONTHLY;INTERVAL=2;BYDAY=2MO',
      '2026-10-12 2026-12-14 2027-02-08',
    ],
    ['every: month, from: 2026-10-30', 'FREQ=MONTHLY;BYDAY=-1FR', '2026-10-30 2026-11-27 2026-12-25'],
  ])('say of `%s` that it is %s, which rrule reads as those days', (words, rule, days) => {
    const lines = linesOf(scheduled(words));
    expect(lines.filter((line) => line.startsWith('RRULE'))).toEqual([`RRULE:${rule}`]);
    const [, start] = /^DTSTART;VALUE=DATE:(\d{8})$/mu.exec(lines.join('\n')) ?? [];
    const found = rrulestr(`DTSTART:${start}T000000Z\nRRULE:${rule}`).all((_, index) => index < 3);
    expect(found.map((date) => date.toISOString().slice(0, 10)).join(' ')).toBe(days);
  });
});
