/** Local time of a place, as the wall clock shows it: `YYYY-MM-DDTHH:MM:SS`. */
export type WallTime = string;

/** A moment at which a zone's clocks are set, and its distance from UTC in seconds before and after. */
export type Transition = { readonly at: number; readonly before: number; readonly after: number };

const SECOND = 1000;
/** Shorter than any zone ever kept one time. */
const STRIDE = 7 * 86_400 * SECOND;

/** How many seconds a zone is ahead of UTC at a moment given in milliseconds. */
export type Offsets = (moment: number) => number;

/** The offsets of a zone by its IANA name, from the time zone data of the runtime. */
export function offsetsOf(zone: string): Offsets {
  const format = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  });
  return (moment) => {
    const part = new Map(format.formatToParts(moment).map(({ type, value }) => [type, Number(value)]));
    const read = (type: Intl.DateTimeFormatPartTypes): number => part.get(type) ?? 0;
    const wall = Date.UTC(
      read('year'),
      read('month') - 1,
      read('day'),
      read('hour'),
      read('minute'),
      read('second'),
    );
    return Math.round((wall - moment) / SECOND);
  };
}

/** Every change of the clocks from one moment to another. */
export function transitionsOf(offsets: Offsets, from: number, to: number): readonly Transition[] {
  const found: Transition[] = [];
  for (let start = from; start < to; start += STRIDE) {
    const [before, after] = [offsets(start), offsets(start + STRIDE)];
    if (before !== after) found.push({ at: changeWithin(offsets, start, start + STRIDE), before, after });
  }
  return found;
}

/** The first second at which the offset is no longer that of the start. */
function changeWithin(offsets: Offsets, start: number, end: number): number {
  const before = offsets(start);
  let [low, high] = [start / SECOND, end / SECOND];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (offsets(middle * SECOND) === before) low = middle;
    else high = middle;
  }
  return high * SECOND;
}

/** A moment as the wall clock of a place with that offset shows it. */
export function wallTime(moment: number, offset: number): WallTime {
  return new Date(moment + offset * SECOND).toISOString().slice(0, 19);
}

/** The moment at which a place's wall clock shows a time; of two, the first; of none, as far past as clocks were set forward. */
export function momentOf(offsets: Offsets, wall: WallTime): number {
  const asUtc = Date.parse(`${wall}Z`);
  const [early, late] = [
    asUtc - offsets(asUtc - 86_400_000) * SECOND,
    asUtc - offsets(asUtc + 86_400_000) * SECOND,
  ];
  const fits = [early, late].filter((moment) => moment + offsets(moment) * SECOND === asUtc);
  return fits.length > 0 ? Math.min(...fits) : early;
}
