import { edgesOf } from '../flat-polygon.ts';
import type { FlatPoint, Net } from '../net.ts';
import { perNet } from '../per-net.ts';

/** Strips of a bent panel are turned by less than this against each other, in degrees. */
const BEND = 30;

/**
 * Of each panel's sides, from corner to corner: whether it is drawn, for a net of strips. All are, but those where two
 * strips of one bent panel meet.
 */
export const drawnEdges: (strips: Net) => ReadonlyMap<string, readonly boolean[]> = perNet((strips) => {
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
  return new Map(edges);
});

function sideKeys(outline: readonly FlatPoint[]): string[] {
  return edgesOf(outline).map(([a, b]) => keyOf(a, b));
}

/** The same for both directions of a side. */
function keyOf(a: FlatPoint, b: FlatPoint): string {
  const [first, second] = [a, b].map(({ x, y }) => `${x} ${y}`).sort();
  return `${first} ${second}`;
}
