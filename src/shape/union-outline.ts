import { isOnSegment, isSamePoint, sideOf } from './exact.ts';
import { edgesOf } from './flat-polygon.ts';
import type { FlatPoint, FlatSegment } from './net.ts';

/**
 * The outlines of what convex outlines side by side make together, all of them clockwise: one for a part of a sheet
 * without a hole, the outer one first.
 */
export function unionOutlines(
  outlines: readonly (readonly FlatPoint[])[],
): readonly (readonly FlatPoint[])[] {
  const corners = outlines.flat();
  const edges = outlines.flatMap((outline) => edgesOf(outline).flatMap((edge) => brokenAt(edge, corners)));
  const open = new Set(edges.filter((edge) => !edges.some((other) => areOpposite(edge, other))));
  const loops: (readonly FlatPoint[])[] = [];
  for (const first of open) {
    const loop = [first.from];
    open.delete(first);
    for (let end = first.to; !isSamePoint(end, first.from); ) {
      const next = [...open].find(({ from }) => isSamePoint(from, end));
      if (!next) break;
      loop.push(end);
      open.delete(next);
      end = next.to;
    }
    loops.push(straightened(loop));
  }
  return loops;
}

/** An edge in stretches, broken wherever a corner of another outline lies on it. */
function brokenAt([from, to]: readonly [FlatPoint, FlatPoint], corners: readonly FlatPoint[]): FlatSegment[] {
  const within = corners.filter(
    (point) => !isSamePoint(point, from) && !isSamePoint(point, to) && isOnSegment({ from, to }, point),
  );
  const far = ({ x, y }: FlatPoint): number => Math.hypot(x.minus(from.x).mm, y.minus(from.y).mm);
  const stops = [from, ...within.toSorted((a, b) => far(a) - far(b)), to];
  return stops.slice(1).flatMap((stop, index) => {
    const start = stops[index] ?? stop;
    return isSamePoint(start, stop) ? [] : [{ from: start, to: stop }];
  });
}

function areOpposite(edge: FlatSegment, other: FlatSegment): boolean {
  return isSamePoint(edge.from, other.to) && isSamePoint(edge.to, other.from);
}

/** An outline without the corners at which it runs straight on, from its uppermost corner, the left one of several. */
function straightened(points: readonly FlatPoint[]): readonly FlatPoint[] {
  const corners = points.filter((point, index) => {
    const [before, after] = [points.at(index - 1), points[(index + 1) % points.length]];
    return !before || !after || sideOf({ from: before, to: after }, point).sign !== 0;
  });
  const start = corners.reduce((best, { x, y }, index) => {
    const order = y.compare(corners[best]?.y ?? y) || x.compare(corners[best]?.x ?? x);
    return order < 0 ? index : best;
  }, 0);
  return [...corners.slice(start), ...corners.slice(0, start)];
}
