import { timeInWords } from '../words/days.ts';
import type { Voice } from '../words/voice.ts';

/** What the clock knows of a step. */
type TimedStep = {
  /** Minutes of work; 0 where nothing is known of them. */
  readonly minutes: number;
  /** Minutes of drying once the work is done; 0 for none. */
  readonly dry: number;
  /** Ids of the pieces it takes up. */
  readonly pieces: ReadonlySet<string>;
};

/** When a step is worked on, in minutes after the start. */
export type Slot = {
  readonly from: number;
  readonly to: number;
  /** When what it leaves to dry is dry; undefined where nothing dries. */
  readonly dryAt: number | undefined;
  /** Minutes of standing still before it, because something it needs is not dry yet. */
  readonly waits: number;
};

/**
 * Runs the steps one after the other. Drying runs alongside the steps behind it; only a step that takes up one of the
 * drying pieces again, and the last step, wait until it is over. What the last step leaves to dry counts to the end.
 */
export function runClock(steps: readonly TimedStep[]): {
  readonly slots: readonly Slot[];
  readonly end: number;
} {
  const slots: Slot[] = [];
  let now = 0;
  steps.forEach((step, index) => {
    const isLast = index === steps.length - 1;
    const wet = slots.filter((_, earlier) => isLast || sharesPiece(steps[earlier], step));
    const from = Math.max(now, ...wet.map(({ dryAt }) => dryAt ?? 0));
    const to = from + step.minutes;
    slots.push({ from, to, dryAt: step.dry > 0 ? to + step.dry : undefined, waits: from - now });
    now = to;
  });
  return { slots, end: Math.max(now, ...slots.map(({ dryAt }) => dryAt ?? 0)) };
}

function sharesPiece(one: TimedStep | undefined, other: TimedStep): boolean {
  return one !== undefined && [...one.pieces].some((piece) => other.pieces.has(piece));
}

/** What every step without minutes gets of those that are left for them; whole minutes. */
export function shareOf(left: number, steps: number): number {
  return steps === 0 ? 0 : Math.floor(Math.max(0, left) / steps);
}

/** Says when something happens, minutes after the start; shorter where another time follows: see `timeInWords`. */
export type SayTime = (minutes: number, isBefore?: boolean) => string;

const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;

/**
 * `6:42 PM` as the language writes it, and past midnight the day too; `0:12` where no start is known.
 * @param start `HH:MM`
 */
export function timesFrom(start: string | undefined, voice: Voice): SayTime {
  if (start === undefined) return elapsed;
  const format = new Intl.DateTimeFormat(voice.language, {
    hour: 'numeric',
    minute: '2-digit',
    timeZone: 'UTC',
  });
  const begin = Date.parse(`1970-01-01T${start}Z`);
  return (minutes, isBefore) => {
    const moment = begin + minutes * MINUTE;
    const days = Math.floor(moment / DAY);
    const time = timeInWords(format, moment, voice.say, isBefore);
    return days === 0 ? time : `${time} (${voice.count('cue-days-on', days)})`;
  };
}

/** `0:00`, `1:05`: hours and minutes since the start. */
function elapsed(minutes: number): string {
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
}
