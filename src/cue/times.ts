import type { Voice } from '../words/voice.ts';
import { elapsed, momentAt } from './clock.ts';

/** Says when something happens, minutes after the start. */
export type SayTime = (minutes: number) => string;

/** `6:42 PM` as the language writes it; `0:12` where no start is known; past midnight the day is said too. */
export function timesFrom(start: string | undefined, voice: Voice): SayTime {
  const format = new Intl.DateTimeFormat(voice.language, {
    hour: 'numeric',
    minute: '2-digit',
    timeZone: 'UTC',
  });
  return (minutes) => {
    const moment = momentAt(start, minutes);
    if (moment.kind === 'elapsed') return elapsed(moment.minutes);
    const time = format.format(new Date(moment.minute * MINUTE));
    return moment.days === 0 ? time : `${time} (${voice.count('cue-days-on', moment.days)})`;
  };
}

const MINUTE = 60_000;
