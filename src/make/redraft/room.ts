import { Length } from '../../measure/length.ts';
import type { Volume } from '../../measure/size.ts';
import type { Piece, Project } from '../../project/model.ts';
import { closedSize, type Made } from '../../shape/closed-size.ts';
import { bestPacking, type Cavity, type Triple } from '../../shape/closure/packing.ts';
import { leftIn, type Room, roomsOf } from '../../shape/closure/rooms.ts';
import { linksOf } from '../../shape/links.ts';
import { ownNet } from '../../shape/sheets.ts';

/** What a new project is to hold; as many as the old one held where no number is given. */
export type Wish = { readonly item: Triple; readonly count?: number };

/** The piece of a project that holds something, and which of its rooms. */
export type Holder = { readonly piece: Piece; readonly index: number; readonly room: Room };

/** The piece that `holds:` names; else the first that has walls, and where none has, the first with a pocket. */
export function holderOf({ project, shapes }: Made): Holder | undefined {
  const named = project.holds?.in?.value;
  const holders = [...project.pieces.values()].flatMap((piece) => {
    const id = piece.id.value;
    const net = piece.on || (named !== undefined && named !== id) ? undefined : ownNet(shapes.nets, id);
    return net ? roomsOf(net).map((room, index) => ({ piece, index, room })) : [];
  });
  return holders.find(({ room }) => !room.round) ?? holders[0];
}

/** How many are to go in. */
export function countOf({ holds }: Project, { count }: Wish): number {
  return count ?? holds?.count.value ?? 1;
}

/** What things take together as they are to lie, and what is to be left each way; undefined where nothing ends the room. */
export type Goal = { readonly block: Triple; readonly spare: Cavity };

/** What a thing has to spare each way where nothing is known of it: in a box, and in flat paper. Common practice, no source. */
const USUAL_ROOM: Length = Length.of(1, 8, 'in');
const USUAL_IN_FLAT: Length = Length.of(3, 16, 'in');

/** How other things are to lie: with as much to spare as those had that are in it, but no more than `mostSpare`. */
export function goalFor(made: Made, { piece, room }: Holder, wish: Wish, mostSpare?: Length): Goal {
  const was = laidIn(room, piece, made);
  const now = laidAlike(wish.item, countOf(made.project, wish), was, room);
  const block = blockOf(now);
  const had = was ? leftIn(room, blockOf(was)) : undefined;
  const left = leftIn(room, block);
  const spare = map3((way) => {
    if (!left[way]) return undefined;
    const own = had ? (had[way] ?? Length.zero) : room.round ? USUAL_IN_FLAT : USUAL_ROOM;
    return mostSpare ? Length.min(own, mostSpare) : own;
  });
  return { block, spare };
}

/** How things lie in a room: the sides of one of them along its width, height and depth, and how many side by side. */
type Arrangement = { readonly item: Triple; readonly rows: readonly [number, number, number] };

function blockOf({ item, rows }: Arrangement): Triple {
  return map3((way) => item[way].times(rows[way]));
}

/** How the things lie in a box that the project says are in it, or the piece that it is for. */
function laidIn({ cavity, leave }: Room, piece: Piece, made: Made): Arrangement | undefined {
  const { holds } = made.project;
  if (holds?.size) {
    const [a, b, c] = holds.size;
    return bestPacking([a.value, b.value, c.value], holds.count.value, cavity, leave);
  }
  const link = linksOf(made).find(({ holder }) => holder === piece);
  const item = link && closedSize(made, link.held);
  return item && bestPacking(item, link.count, cavity, leave);
}

/**
 * How other things lie as those do: the longest side where the longest was, in as many rows each way as come nearest to
 * the box as it was in its proportions, with few places left empty. In flat paper they lie on one another; where a room
 * is open at both ends, in one row, with their longest side that way if nothing is known.
 */
function laidAlike(sides: Triple, count: number, was: Arrangement | undefined, room: Room): Arrangement {
  const size = map3((way) => room.size[way] ?? Length.zero);
  const longest = Length.max(...size).times(2);
  const order = ranksOf(was?.item ?? map3((way) => (WAYS[way] === room.open ? longest : size[way])));
  const sorted = sides.toSorted((a, b) => a.compare(b));
  const item = map3((way) => sorted[order[way]] ?? Length.zero);
  if (room.round) return { item, rows: [1, 1, count] };
  let best = { rows: [1, 1, count] as Arrangement['rows'], cost: Number.POSITIVE_INFINITY };
  for (const rows of rowsOf(count)) {
    if (rows.some((number, way) => number > 1 && room.cavity[way as WayOfThree] === undefined)) continue;
    const shares = map3((way) => Math.log((item[way].mm * rows[way]) / size[way].mm));
    const mean = (shares[0] + shares[1] + shares[2]) / 3;
    const empty = (rows[0] * rows[1] * rows[2]) / count - 1;
    const cost = shares.reduce((sum, share) => sum + (share - mean) ** 2, empty);
    if (cost < best.cost) best = { rows, cost };
  }
  return { item, rows: best.rows };
}

/** Every way to put so many in rows. */
function rowsOf(count: number): readonly Arrangement['rows'][] {
  const upTo = (most: number): readonly number[] => Array.from({ length: most }, (_, index) => index + 1);
  return upTo(count).flatMap((across) =>
    upTo(Math.ceil(count / across)).map((up) => [across, up, Math.ceil(count / (across * up))] as const),
  );
}

/** Which of three lengths is the shortest (0), the next and the longest (2). */
function ranksOf(lengths: Triple): readonly [number, number, number] {
  const ways = [0, 1, 2].sort((a, b) => lengths[a as WayOfThree].compare(lengths[b as WayOfThree]));
  return map3((way) => ways.indexOf(way));
}

type WayOfThree = 0 | 1 | 2;

const WAYS: readonly (keyof Volume)[] = ['width', 'height', 'depth'];

/** One for each of width, height and depth. */
export function map3<T>(give: (way: WayOfThree) => T): readonly [T, T, T] {
  return [give(0), give(1), give(2)];
}
