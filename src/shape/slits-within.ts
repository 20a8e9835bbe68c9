import type { FlatPoint, FlatSegment, Net } from './net.ts';

/** Slits that begin and end within the paper: neither a trimmer nor scissors get into them. */
export function slitsWithin(net: Net): readonly FlatSegment[] {
  const left = new Set(net.slits);
  const isReached = (point: FlatPoint): boolean =>
    isOpen(net, point) || net.slits.some((slit) => !left.has(slit) && isEndOf(slit, point));
  for (;;) {
    const reached = [...left].filter(({ from, to }) => isReached(from) || isReached(to));
    if (reached.length === 0) return [...left];
    for (const slit of reached) left.delete(slit);
  }
}

/** Whether scissors get in at a point: on the edge of the sheet, or of what was cut away. */
function isOpen({ size, waste }: Net, point: FlatPoint): boolean {
  const { x, y } = point;
  const isOnEdge = x.sign === 0 || y.sign === 0 || x.equals(size.width) || y.equals(size.height);
  return isOnEdge || waste.some((part) => part.some((corner) => isSame(corner, point)));
}

function isEndOf({ from, to }: FlatSegment, point: FlatPoint): boolean {
  return isSame(from, point) || isSame(to, point);
}

function isSame(one: FlatPoint, other: FlatPoint): boolean {
  return one.x.equals(other.x) && one.y.equals(other.y);
}
