import { Temporal } from 'temporal-polyfill';
import type { Site } from '../project/model.ts';
import { timeInWords } from '../words/days.ts';
import type { Voice } from '../words/voice.ts';

/** When sessions begin, as `site.yaml` says: a time of day, and the zone it is meant in. */
export type Hours = { readonly at?: string | undefined; readonly zone?: string | undefined };

export function hoursOf({ sessions }: Pick<Site, 'sessions'>): Hours {
  return { at: sessions?.at?.value, zone: sessions?.zone?.value };
}

/** `Thursday, December 10, 2026 at 6:30 PM CST`: a session's day, with the time its schedule gives it, named zone and all. */
export function whenText(date: string, { at, zone }: Hours, voice: Voice): string {
  if (at === undefined) return voice.day(date);
  const timeZone = zone ?? 'UTC';
  const moment = Temporal.PlainDateTime.from(`${date}T${at}`).toZonedDateTime(timeZone);
  const time = timeFormat(voice.language, timeZone, zone !== undefined);
  const spoken = timeInWords(time, moment.epochMilliseconds, voice.say);
  return voice.say('site-when', {
    day: voice.day(date),
    time: [spoken, ...zoneName(time, moment.epochMilliseconds)].join('\u00a0'),
  });
}

/** Setting one up takes a thousand times as long as using it. */
const times = new Map<string, Intl.DateTimeFormat>();

function timeFormat(language: string, timeZone: string, isNamed: boolean): Intl.DateTimeFormat {
  const key = `${language} ${timeZone} ${isNamed}`;
  const naming = isNamed ? ({ timeZoneName: 'short' } as const) : {};
  const format =
    times.get(key) ??
    new Intl.DateTimeFormat(language, { hour: 'numeric', minute: '2-digit', timeZone, ...naming });
  times.set(key, format);
  return format;
}

/** A zone by the name that people give it, `CST`; a mere difference from another place, `UTC+1`, tells them nothing. */
function zoneName(time: Intl.DateTimeFormat, moment: number): readonly string[] {
  const name = time.formatToParts(moment).find(({ type }) => type === 'timeZoneName')?.value;
  return name !== undefined && /^\p{L}+$/u.test(name) ? [name] : [];
}
