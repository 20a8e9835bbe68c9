/** What the clock knows of a step. */
export type TimedStep = {
  /** Minutes of work; 0 where none are given. */
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

export type Clock = { readonly slots: readonly Slot[] /** Everything done and dry. */; readonly end: number };

/**
 * Runs the steps one after the other. Drying runs alongside the steps behind it; only a step that takes up one of the
 * drying pieces again, and the last step, wait until it is over. What the last step leaves to dry counts to the end.
 */
export function runClock(steps: readonly TimedStep[]): Clock {
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

const DAY = 24 * 60;

/** A moment of the session. */
export type Moment =
  /** On the wall: minutes after midnight, `days` after the day of the session. */
  | { readonly kind: 'time'; readonly minute: number; readonly days: number }
  /** Since the start, where nobody said when that is. */
  | { readonly kind: 'elapsed'; readonly minutes: number };

/** @param start `HH:MM`, or undefined where none is known. */
export function momentAt(start: string | undefined, minutes: number): Moment {
  if (start === undefined) return { kind: 'elapsed', minutes };
  const [hours = 0, past = 0] = start.split(':').map(Number);
  const total = hours * 60 + past + minutes;
  return { kind: 'time', minute: total % DAY, days: Math.floor(total / DAY) };
}

/** `0:00`, `1:05`: hours and minutes since the start. */
export function elapsed(minutes: number): string {
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
}
