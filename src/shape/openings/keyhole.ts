import { cross, edgesOf, type Point2, signedArea } from '../flat-polygon.ts';

/** An outline that goes round its holes too, and which of its sides, by their first corners, only lead there and back. */
type Keyhole = { readonly points: readonly Point2[]; readonly bridges: readonly number[] };

/** A corner of an outline, and whether the side from it to the next is an edge of the paper. */
type LoopCorner = { readonly point: Point2; readonly isEdge: boolean };

type Bridge = { readonly from: number; readonly to: number; readonly length: number };

/**
 * One outline of a part with holes: from it a bridge of no width leads to each hole, round that the other way, and back.
 * A slit is a hole of two points.
 */
export function keyholed(outline: readonly Point2[], holes: readonly (readonly Point2[])[]): Keyhole {
  const sense = Math.sign(signedArea(outline));
  let ring: readonly LoopCorner[] = outline.map((point) => ({ point, isEdge: true }));
  for (const [index, hole] of holes.entries()) {
    const against = Math.sign(signedArea(hole)) === sense ? hole.toReversed() : hole;
    ring = bridged(ring, against, holes.slice(index + 1));
  }
  return {
    points: ring.map(({ point }) => point),
    bridges: ring.flatMap(({ isEdge }, index) => (isEdge ? [] : [index])),
  };
}

/** An outline with one more hole. */
function bridged(
  ring: readonly LoopCorner[],
  hole: readonly Point2[],
  others: readonly (readonly Point2[])[],
): readonly LoopCorner[] {
  const { from, to } = shortestBridge(ring, hole, others);
  const [start, end] = [ring[from], hole[to]];
  if (!start || !end) return ring;
  const round = [...hole.slice(to), ...hole.slice(0, to)].map((point) => ({ point, isEdge: true }));
  return [
    ...ring.slice(0, from),
    { ...start, isEdge: false },
    ...round,
    { point: end, isEdge: false },
    ...ring.slice(from),
  ];
}

/** The shortest way from a corner of the outline to one of the hole that crosses nothing. */
function shortestBridge(
  ring: readonly LoopCorner[],
  hole: readonly Point2[],
  others: readonly (readonly Point2[])[],
): Bridge {
  const edges = [ring.map(({ point }) => point), hole, ...others].flatMap(edgesOf);
  const bridges = ring.flatMap(({ point: { x, y } }, from) =>
    hole.map((end, to): Bridge => ({ from, to, length: Math.hypot(end.x - x, end.y - y) })),
  );
  const isClear = ({ from, to }: Bridge): boolean => {
    const [start, end] = [ring[from]?.point, hole[to]];
    return !!start && !!end && !edges.some((edge) => cross(edge, [start, end]));
  };
  return bridges.sort((a, b) => a.length - b.length).find(isClear) ?? { from: 0, to: 0, length: 0 };
}
