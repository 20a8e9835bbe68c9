import { Length } from '../../measure/length.ts';

/** Three lengths, in any order. */
export type Triple = readonly [Length, Length, Length];

/** A number of equal things put into a room in rows, one way round. */
export type Packing = {
  /** How one of them lies: along the room's first, second and third length. */
  readonly item: Triple;
  /** How many side by side along each. */
  readonly rows: readonly [number, number, number];
  /** What is left in each direction; negative where they stick out. */
  readonly clearance: Triple;
};

const WAYS: readonly (readonly [0 | 1 | 2, 0 | 1 | 2, 0 | 1 | 2])[] = [
  [0, 1, 2],
  [0, 2, 1],
  [1, 0, 2],
  [1, 2, 0],
  [2, 0, 1],
  [2, 1, 0],
];

/**
 * The way to put `count` equal things into a room, all the same way round, that leaves most in its tightest
 * direction: one in which everything fits, if there is any.
 */
export function bestPacking(item: Triple, count: number, room: Triple): Packing {
  const packings = WAYS.flatMap(([a, b, c]) => {
    const turned: Triple = [item[a], item[b], item[c]];
    return arrangements(count, turned, room).map((rows) => packed(turned, rows, room));
  });
  const [first, ...rest] = packings;
  if (!first) throw new RangeError(`nothing to pack: ${count}`);
  return rest.reduce((best, each) => (tightest(each).greaterThan(tightest(best)) ? each : best), first);
}

/** What is left in a packing's tightest direction; negative when it does not fit. */
export function tightest({ clearance }: Packing): Length {
  return Length.min(...clearance);
}

function packed(item: Triple, rows: readonly [number, number, number], room: Triple): Packing {
  const left = (index: 0 | 1 | 2): Length => room[index].minus(item[index].times(rows[index]));
  return { item, rows, clearance: [left(0), left(1), left(2)] };
}

/** Rows, columns and layers that hold the count; no more of each than fit, but at least one. */
function arrangements(count: number, item: Triple, room: Triple): (readonly [number, number, number])[] {
  const most = ([0, 1] as const).map((index) => Math.min(count, Math.max(1, fits(item[index], room[index]))));
  const [columns = 1, rows = 1] = most;
  const found: (readonly [number, number, number])[] = [];
  for (let a = 1; a <= columns; a++) {
    for (let b = 1; b <= rows; b++) found.push([a, b, Math.ceil(count / (a * b))]);
  }
  return found;
}

function fits(item: Length, room: Length): number {
  if (room.sign <= 0) return 0;
  const { numerator, denominator } = room.over(item);
  return Number(numerator / denominator);
}
