import type { Voice } from '../words/voice.ts';
import type { Clock } from './calendar/session.ts';
import { momentOf, offsetsOf } from './calendar/zone-offset.ts';

/** `Thursday, December 10, 2026 at 6:30 PM CST`: a session's day, with the time its schedule gives it, named zone and all. */
export function whenText(date: string, { at, zone }: Clock, voice: Voice): string {
  if (at === undefined) return voice.day(date);
  const wall = `${date}T${at}:00`;
  const moment = zone === undefined ? Date.parse(`${wall}Z`) : momentOf(offsetsOf(zone), wall);
  const time = new Intl.DateTimeFormat(voice.language, {
    hour: 'numeric',
    minute: '2-digit',
    timeZone: zone ?? 'UTC',
    ...(zone === undefined ? {} : { timeZoneName: 'short' }),
  });
  return voice.say('site-when', {
    day: voice.day(date),
    time: time.format(moment).replace(/\s/gu, '\u00a0'),
  });
}
