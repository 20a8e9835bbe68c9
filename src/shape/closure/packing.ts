import { Length } from '../../measure/length.ts';

/** Three lengths, in any order. */
export type Triple = readonly [Length, Length, Length];

/** What there is to put things into; undefined the way it is open at both ends, where they may stick out. */
export type Cavity = readonly [Length | undefined, Length | undefined, Length | undefined];

/** What a block leaves of a room in each direction; undefined where nothing ends it. */
export type Leave = (block: Triple) => Cavity;

/** A number of equal things put into a room in rows, one way round. */
export type Packing = {
  /** How one of them lies: along the room's first, second and third length. */
  readonly item: Triple;
  /** How many side by side along each. */
  readonly rows: readonly [number, number, number];
  /** What is left in each direction; negative where they do not fit, undefined where nothing ends the room. */
  readonly clearance: Cavity;
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
 * direction: one in which everything fits, if there is any. The way a room is open there is one row only: what is put
 * behind one another in a band is held by nothing. `leave` says what a room leaves that is more than three lengths.
 */
export function bestPacking(
  item: Triple,
  count: number,
  room: Cavity,
  leave: Leave = leaveOf(room),
): Packing {
  const packings = WAYS.flatMap(([a, b, c]) => {
    const turned: Triple = [item[a], item[b], item[c]];
    return arrangements(count, turned, room).map(
      (rows): Packing => ({ item: turned, rows, clearance: leave(blockOf(turned, rows)) }),
    );
  });
  const [first, ...rest] = packings;
  if (!first) throw new RangeError(`nothing to pack: ${count}`);
  return rest.reduce((best, each) => (tightest(each).greaterThan(tightest(best)) ? each : best), first);
}

/** A block turned so that it goes into a room and leaves least of it, all ways together. */
type Snug = { readonly block: Triple; readonly clearance: Cavity; readonly left: Length };

/** How a block goes in most snugly; undefined where it does not go in at all. */
export function snuggest(block: Triple, room: Cavity, leave: Leave = leaveOf(room)): Snug | undefined {
  const ways = WAYS.flatMap(([a, b, c]): Snug[] => {
    const turned: Triple = [block[a], block[b], block[c]];
    const clearance = leave(turned);
    const lefts = clearance.filter((each) => each !== undefined);
    return lefts.every(({ sign }) => sign >= 0)
      ? [{ block: turned, clearance, left: Length.sum(lefts) }]
      : [];
  });
  return ways.toSorted((one, other) => one.left.compare(other.left))[0];
}

/** What is left in a packing's tightest direction; negative when it does not fit. */
export function tightest({ clearance }: Packing): Length {
  const [first, ...rest] = clearance.filter((left) => left !== undefined);
  if (!first) throw new RangeError('a room that nothing ends holds nothing');
  return Length.min(first, ...rest);
}

/** What so many rows of a thing take each way. */
function blockOf([a, b, c]: Triple, [m, n, o]: Packing['rows']): Triple {
  return [a.times(m), b.times(n), c.times(o)];
}

/** What a room leaves of itself: the difference of lengths, where nothing else is said. */
export function leaveOf([a, b, c]: Cavity, leave?: Leave): Leave {
  return leave ?? (([width, height, depth]) => [a?.minus(width), b?.minus(height), c?.minus(depth)]);
}

/** Rows, columns and layers that hold the count; but for the last of them, no more than fit, and at least one. */
function arrangements(count: number, item: Triple, room: Cavity): (readonly [number, number, number])[] {
  const most = (index: 0 | 1 | 2): number => Math.min(count, Math.max(1, fits(item[index], room[index])));
  const found: (readonly [number, number, number])[] = [];
  const isLastOpen = room[2] === undefined;
  for (let a = 1; a <= most(0); a++) {
    for (let b = 1; b <= most(isLastOpen ? 2 : 1); b++) {
      const rest = Math.ceil(count / (a * b));
      found.push(isLastOpen ? [a, rest, b] : [a, b, rest]);
    }
  }
  return found;
}

/** How many of a length a room takes; where it is open, the one it is held by. */
function fits(item: Length, room: Length | undefined): number {
  if (!room) return 1;
  if (room.sign <= 0) return 0;
  const { numerator, denominator } = room.over(item);
  return Number(numerator / denominator);
}
