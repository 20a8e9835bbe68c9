import type { FlatPoint, Net } from '../net.ts';

/** Strips of a bent panel are turned by less than this against each other, in degrees. */
const BEND = 30;

const known: WeakMap<Net, ReadonlyMap<string, readonly boolean[]>> = new WeakMap<
  Net,
  ReadonlyMap<string, readonly boolean[]>
>();

/**
 * Of each panel's sides, from corner to corner: whether it is drawn, for a net of strips. All are, but those where two
 * strips of one bent panel meet.
 */
export function drawnEdges(strips: Net): ReadonlyMap<string, readonly boolean[]> {
  const before = known.get(strips);
  if (before) return before;
  const meeting = new Map<string, number>();
  for (const key of strips.panels.flatMap(({ outline }) => sideKeys(outline))) {
    meeting.set(key, (meeting.get(key) ?? 0) + 1);
  }
  const sharp = new Set(
    strips.folds.filter(({ angle }) => angle >= BEND).map(({ from, to }) => keyOf(from, to)),
  );
  const edges = strips.panels.map(({ id, outline }) => {
    const drawn = sideKeys(outline).map((key) => sharp.has(key) || meeting.get(key) === 1);
    return [id, drawn] as const;
  });
  const result = new Map(edges);
  known.set(strips, result);
  return result;
}

function sideKeys(outline: readonly FlatPoint[]): string[] {
  return outline.map((corner, index) => keyOf(corner, outline[(index + 1) % outline.length] ?? corner));
}

/** The same for both directions of a side. */
function keyOf(a: FlatPoint, b: FlatPoint): string {
  const [first, second] = [a, b].map(({ x, y }) => `${x} ${y}`).sort();
  return `${first} ${second}`;
}
