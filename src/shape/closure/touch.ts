import { edgesOf } from '../flat-polygon.ts';
import { type FoldedPanel, type FoldedShape, foldedPanelOf } from '../fold.ts';
import type { Net } from '../net.ts';
import { foldsOf, otherSide } from '../panel-tree.ts';
import { between, distanceFromLine, dot, length, minus, type Point3 } from '../space.ts';
import { apart, overlapOf, runAlike } from './overlap.ts';

/** How two folded panels meet: one lies on the other, or they share an edge. */
export type Touch = 'face' | 'edge';

/** What is broader than this lies on something, what is longer meets it; in millimetres. */
const LEAST = 3;

/** How two panels that no fold joins meet once folded; undefined where they don't. */
export function touchOf(
  shape: FoldedShape,
  [first, second]: readonly [string, string],
  allowed: number,
): Touch | undefined {
  const [one, other] = [foldedPanelOf(shape, first), foldedPanelOf(shape, second)];
  if (runAlike(one, other) && apart(one, other) <= allowed) {
    const { width, height } = overlapOf(one, other);
    if (Math.min(width, height) > LEAST) return 'face';
  }
  return shareAnEdge(one, other, allowed) ? 'edge' : undefined;
}

/** Whether an edge of one runs along an edge of the other over more than half of the shorter. */
function shareAnEdge(first: FoldedPanel, second: FoldedPanel, allowed: number): boolean {
  return edgesOf(first.corners).some((edge) =>
    edgesOf(second.corners).some((other) => {
      const long = Math.min(lengthOf(edge), lengthOf(other));
      return long > LEAST && sharedLength(edge, other, allowed) > long / 2;
    }),
  );
}

type Edge = readonly [Point3, Point3];

function lengthOf([from, to]: Edge): number {
  return length(minus(to, from));
}

/** How long two edges run along each other, no further apart than allowed. */
function sharedLength(edge: Edge, other: Edge, allowed: number): number {
  const [from, to] = edge;
  const along = (point: Point3): number => dot(minus(point, from), minus(to, from)) / lengthOf(edge);
  const ends = other.map(along);
  const [start, end] = [Math.max(0, Math.min(...ends)), Math.min(lengthOf(edge), Math.max(...ends))];
  if (end <= start) return 0;
  const isBeside = [start, end].every((at) => {
    return distanceFromLine(other, between(from, to, at / lengthOf(edge))) <= allowed;
  });
  return isBeside ? end - start : 0;
}

/** Whether a fold joins two panels. */
export function areJoined(net: Net, first: string, second: string): boolean {
  return foldsOf(net, first).some((fold) => otherSide(fold, first) === second);
}
