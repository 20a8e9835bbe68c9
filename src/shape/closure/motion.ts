import type { FoldedShape } from '../folded-shape.ts';
import type { Net } from '../net.ts';
import { cross, distance, minus, type Point3, scaled, unit } from '../space.ts';
import { tubesOf } from '../tube.ts';

/** A turn about a line in space, at one turn a second: its direction, and the moment of that about zero. */
type Screw = readonly [number, number, number, number, number, number];

/** A fold between two bodies. */
type BodyHinge = { readonly bodies: readonly [string, string]; readonly screw: Screw };

/** How far each hinge turns when a body moves: 1 or −1 for those on the way to it from the base. */
type Turning = ReadonlyMap<BodyHinge, 1 | -1>;

/**
 * A pivot under this is none. What nearly meets (a wall a hair too long) must not pass for held, and lengths are shares
 * of the whole shape.
 */
const LEAST_PIVOT = 0.01;

/**
 * The panels of a folded shape that can still move against its base. What is glued moves as one, and so does a tube that
 * is glued: a sleeve may be pressed flat. Every other fold is a hinge; round each ring of bodies the turns of its hinges
 * come to nothing (loop closure, as in any textbook on mechanisms), and what may turn all the same is loose. Glue counts
 * whether it lands or not: another rule says so.
 */
export function loosePanels(shape: FoldedShape): ReadonlySet<string> {
  const bodyOf = bodiesOf(shape.net);
  const { ways, rings } = hang(hingesOf(shape, bodyOf), bodyOf(shape.base));
  const hinges = [...new Set([...ways.values(), ...rings].flatMap((way) => [...way.keys()]))];
  const turns = freeTurns(
    rings.flatMap((ring) => sum(ring, hinges)),
    hinges.length,
  );
  const isLoose = (way: Turning): boolean =>
    turns.some((turn) => {
      const motion = sum(way, hinges).map((row) =>
        row.reduce((total, each, index) => total + each * (turn[index] ?? 0), 0),
      );
      return Math.max(...motion.map(Math.abs)) > LEAST_PIVOT;
    });
  const loose = new Set([...ways].flatMap(([body, way]) => (isLoose(way) ? [body] : [])));
  return new Set(shape.net.panels.flatMap(({ id }) => (loose.has(bodyOf(id)) ? [id] : [])));
}

/** Which body each panel is part of, named by one of its panels. */
function bodiesOf(net: Net): (panel: string) => string {
  const up = new Map<string, string>();
  const bodyOf = (panel: string): string => {
    const next = up.get(panel);
    return next === undefined ? panel : bodyOf(next);
  };
  const join = (first: string, second: string): void => {
    const [one, other] = [bodyOf(first), bodyOf(second)];
    if (one !== other) up.set(one, other);
  };
  for (const { from, to } of net.glue) join(from, to);
  for (const { isGlued, walls, tab } of tubesOf(net)) {
    if (isGlued) for (const wall of walls) join(wall, tab);
  }
  return bodyOf;
}

function hingesOf(shape: FoldedShape, bodyOf: (panel: string) => string): BodyHinge[] {
  const corners = [...shape.panels.values()].flatMap((panel) => panel.corners);
  const reach = Math.max(1, ...corners.map((corner) => distance(corner, corners[0] ?? corner)));
  return shape.net.folds.flatMap(({ panels: [first, second], from, to }) => {
    const place = shape.panels.get(first)?.place;
    const bodies = [bodyOf(first), bodyOf(second)] as const;
    if (!place || bodies[0] === bodies[1]) return [];
    const start = scaled(place(from), 1 / reach);
    return [{ bodies, screw: screwOf(start, unit(minus(place(to), place(from)))) }];
  });
}

function screwOf(through: Point3, direction: Point3): Screw {
  const moment = cross(through, direction);
  return [direction.x, direction.y, direction.z, moment.x, moment.y, moment.z];
}

/** The way from the base to each body; and each ring that a further hinge closes, as the difference of two ways. */
function hang(
  hinges: readonly BodyHinge[],
  base: string,
): { ways: ReadonlyMap<string, Turning>; rings: readonly Turning[] } {
  const ways = new Map<string, Turning>([[base, new Map()]]);
  const used = new Set<BodyHinge>();
  for (const [body, way] of ways) {
    for (const hinge of hinges) {
      const [first, second] = hinge.bodies;
      const next = first === body ? second : second === body ? first : undefined;
      if (next === undefined || ways.has(next)) continue;
      ways.set(next, new Map([...way, [hinge, first === body ? 1 : -1]]));
      used.add(hinge);
    }
  }
  const closing = hinges.filter((hinge) => !used.has(hinge) && ways.has(hinge.bodies[0]));
  const rings = closing.map((hinge) => {
    const [first, second] = hinge.bodies.map((body) => ways.get(body) ?? new Map());
    const ring = new Map<BodyHinge, 1 | -1>(first);
    for (const [each, sense] of second ?? []) {
      if (ring.has(each)) ring.delete(each);
      else ring.set(each, sense === 1 ? -1 : 1);
    }
    return ring.set(hinge, 1);
  });
  return { ways, rings };
}

/** Six equations, one for each direction of turning and moving, in how far each hinge turns. */
function sum(way: Turning, hinges: readonly BodyHinge[]): number[][] {
  return [0, 1, 2, 3, 4, 5].map((row) =>
    hinges.map((hinge) => (way.get(hinge) ?? 0) * (hinge.screw[row] ?? 0)),
  );
}

/** All turns that make every equation zero, as sums of these. Gauss and Jordan's elimination, the largest pivot first. */
function freeTurns(equations: readonly (readonly number[])[], count: number): number[][] {
  const open = new Set(equations.map((row) => [...row]));
  const pivots = new Map<number, number[]>();
  for (let next = largestIn(open); next; next = largestIn(open)) {
    const { row: pivot, column } = next;
    open.delete(pivot);
    const by = pivot[column] ?? 1;
    for (const [index, value] of pivot.entries()) pivot[index] = value / by;
    for (const row of [...open, ...pivots.values()]) {
      const times = row[column] ?? 0;
      if (times === 0) continue;
      for (const [index, value] of pivot.entries()) row[index] = (row[index] ?? 0) - times * value;
    }
    pivots.set(column, pivot);
  }
  const columns = Array.from({ length: count }, (_, column) => column);
  const free = columns.filter((column) => !pivots.has(column));
  return free.map((column) =>
    columns.map((index) => (index === column ? 1 : -(pivots.get(index)?.[column] ?? 0))),
  );
}

/** The largest number of some rows that is no rounding, with its column. */
function largestIn(
  rows: ReadonlySet<number[]>,
): { readonly row: number[]; readonly column: number } | undefined {
  let found: { readonly row: number[]; readonly column: number } | undefined;
  let size = LEAST_PIVOT;
  for (const row of rows) {
    for (const [column, value] of row.entries()) {
      if (Math.abs(value) < size) continue;
      size = Math.abs(value);
      found = { row, column };
    }
  }
  return found;
}
