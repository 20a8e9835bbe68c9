import { edgesOf } from '../flat-polygon.ts';
import { type FoldedPanel, type FoldedShape, foldedPanelOf, lieAlike } from '../folded-shape.ts';
import { between, distance, distanceFromLine, dot, type Line3, minus } from '../space.ts';
import { overlapOf } from './overlap.ts';

/** How two folded panels meet: one lies on the other, or they share an edge at an angle. */
export type Touch = 'face' | 'edge';

/** What is broader than this lies on something, what is longer meets it; in millimeters. */
const LEAST = 3;

/** How two panels that no fold joins meet once folded; undefined where they don't. */
export function touchOf(
  shape: FoldedShape,
  [first, second]: readonly [string, string],
  allowed: number,
): Touch | undefined {
  const [one, other] = [foldedPanelOf(shape, first), foldedPanelOf(shape, second)];
  if (lieAlike(one, other, allowed)) {
    const { width, height } = overlapOf(one, other);
    // Two that end at one line in one plane, as the returns of a frame may, make no corner.
    return Math.min(width, height) > LEAST ? 'face' : undefined;
  }
  return shareAnEdge(one, other, allowed) ? 'edge' : undefined;
}

/** Whether an edge of one runs along an edge of the other over more than half of the shorter. */
function shareAnEdge(first: FoldedPanel, second: FoldedPanel, allowed: number): boolean {
  return edgesOf(first.corners).some((edge) =>
    edgesOf(second.corners).some((other) => {
      const long = Math.min(distance(...edge), distance(...other));
      return long > LEAST && sharedLength(edge, other, allowed) > long / 2;
    }),
  );
}

/** How long two stretches run along each other, no further apart than allowed. */
export function sharedLength(segment: Line3, other: Line3, allowed: number): number {
  const [from, to] = segment;
  const long = distance(from, to);
  const ends = other.map((point) => dot(minus(point, from), minus(to, from)) / long);
  const [start, end] = [Math.max(0, Math.min(...ends)), Math.min(long, Math.max(...ends))];
  if (end <= start) return 0;
  const isBeside = [start, end].every(
    (at) => distanceFromLine(other, between(from, to, at / long)) <= allowed,
  );
  return isBeside ? end - start : 0;
}
