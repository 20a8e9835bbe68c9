import { Length } from '../../measure/length.ts';
import { roundUp } from '../../measure/round.ts';
import type { Piece, Project } from '../../project/model.ts';
import type { Made } from '../../shape/closed-size.ts';
import { bestPacking, type Triple } from '../../shape/closure/packing.ts';
import { type Room, roomsOf } from '../../shape/closure/rooms.ts';
import { ownNet } from '../../shape/shapes.ts';

/** What a new project is to hold. */
export type Wish = { readonly item: Triple; readonly count: number };

/** The piece of a project that holds something, and the room in it: width, height and depth. */
export type Holder = { readonly piece: Piece; readonly room: Room; readonly size: Triple };

/** The box of a project: the piece that `holds:` names, else the first that has a width, a height and a depth. */
export function holderOf({ project, shapes }: Made): Holder | undefined {
  const named = project.holds?.in?.value;
  for (const piece of project.pieces.values()) {
    const id = piece.id.value;
    const net = piece.on || (named !== undefined && named !== id) ? undefined : ownNet(shapes.nets, id);
    for (const room of net ? roomsOf(net) : []) {
      const [width, height, depth] = room.size;
      if (width && height && depth) return { piece, room, size: [width, height, depth] };
    }
  }
  return undefined;
}

/** How things lie in a room: the sides of one of them along its width, height and depth, and how many side by side. */
type Arrangement = { readonly item: Triple; readonly rows: readonly [number, number, number] };

/** How the things of a project lie in its box, as far as it says what they are. */
function laidIn({ room }: Holder, { holds }: Project): Arrangement | undefined {
  if (!holds?.size) return undefined;
  const [a, b, c] = holds.size;
  return bestPacking([a.value, b.value, c.value], holds.count.value, room.cavity, room.leave);
}

/**
 * How other things lie as those do: the longest side where the longest was, in as many rows each way as come nearest to
 * the box as it was in its proportions, with few places left empty.
 */
function laidAlike(
  { item: sides, count }: Wish,
  was: Arrangement | undefined,
  { size }: Holder,
): Arrangement {
  const order = ranksOf(was?.item ?? size);
  const sorted = sides.toSorted((a, b) => a.compare(b));
  const item = map3((way) => sorted[order[way]] ?? Length.zero);
  let best = { rows: [1, 1, count] as Arrangement['rows'], cost: Number.POSITIVE_INFINITY };
  for (let across = 1; across <= count; across += 1) {
    for (let up = 1; up <= Math.ceil(count / across); up += 1) {
      const rows = [across, up, Math.ceil(count / (across * up))] as const;
      const shares = map3((way) => Math.log((item[way].mm * rows[way]) / size[way].mm));
      const mean = (shares[0] + shares[1] + shares[2]) / 3;
      const empty = (rows[0] * rows[1] * rows[2]) / count - 1;
      const cost = shares.reduce((sum, share) => sum + (share - mean) ** 2, empty);
      if (cost < best.cost) best = { rows, cost };
    }
  }
  return { item, rows: best.rows };
}

/** Which of three lengths is the shortest (0), the next and the longest (2). */
function ranksOf(lengths: Triple): readonly [number, number, number] {
  const ways = [0, 1, 2].sort((a, b) => lengths[a as WayOfRoom].compare(lengths[b as WayOfRoom]));
  return map3((way) => ways.indexOf(way));
}

type WayOfRoom = 0 | 1 | 2;

function map3<T>(give: (way: WayOfRoom) => T): readonly [T, T, T] {
  return [give(0), give(1), give(2)];
}

/** What a thing has to spare each way where nothing is known of it. Common practice, no source. */
const USUAL_ROOM: Length = Length.of(1, 8, 'in');

/**
 * How much wider, higher and deeper a box has to be to hold other things: with as much to spare as it had, but no more
 * than `mostSpare` where that is given. In steps that a score board has.
 */
export function growthFor(made: Made, holder: Holder, wish: Wish, mostSpare?: Length): Triple {
  const was = laidIn(holder, made.project);
  const now = laidAlike(wish, was, holder);
  const pitch = made.project.unit === 'in' ? Length.of(1, 8, 'in') : Length.of(1, 1, 'mm');
  return map3((way) => {
    const had = was ? holder.size[way].minus(was.item[way].times(was.rows[way])) : USUAL_ROOM;
    const spare = mostSpare ? Length.min(had, mostSpare) : had;
    const needed = now.item[way].times(now.rows[way]).plus(spare);
    return roundUp(needed.minus(holder.size[way]), pitch);
  });
}
