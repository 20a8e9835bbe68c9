import { Length } from '../measure/length.ts';
import type { FlatPoint, FlatSegment } from './net.ts';

/** Exact geometry of the flat sheet. A product of two lengths is kept as so many millimeters of one of them. */
function product(first: Length, second: Length): Length {
  const { numerator, denominator } = second.in('mm');
  return first.times(numerator, denominator);
}

/** On which side of a line a point lies: more than nothing to the right of it as one looks along it, nothing on it. */
export function sideOf({ from, to }: FlatSegment, { x, y }: FlatPoint): Length {
  return product(to.x.minus(from.x), y.minus(from.y)).minus(product(to.y.minus(from.y), x.minus(from.x)));
}

export function isSamePoint(first: FlatPoint, second: FlatPoint): boolean {
  return first.x.equals(second.x) && first.y.equals(second.y);
}

/** Whether a point lies on a segment, its ends among it. */
export function isOnSegment(segment: FlatSegment, point: FlatPoint): boolean {
  const { from, to } = segment;
  const isWithin = (a: Length, b: Length, value: Length): boolean =>
    !value.lessThan(Length.min(a, b)) && !value.greaterThan(Length.max(a, b));
  return (
    isWithin(from.x, to.x, point.x) && isWithin(from.y, to.y, point.y) && sideOf(segment, point).sign === 0
  );
}

/** The middle of a segment. */
export function middleOf({ from, to }: FlatSegment): FlatPoint {
  return { x: from.x.plus(to.x).half(), y: from.y.plus(to.y).half() };
}

/** The part of a convex outline to one side of a line: to its right for 1, to its left for -1. */
export function partBeside(
  outline: readonly FlatPoint[],
  line: FlatSegment,
  side: 1 | -1,
): readonly FlatPoint[] {
  const kept: FlatPoint[] = [];
  for (const [index, point] of outline.entries()) {
    const next = outline[(index + 1) % outline.length] ?? point;
    const [here, there] = [sideOf(line, point), sideOf(line, next)];
    if (here.sign * side >= 0) kept.push(point);
    if (here.sign * there.sign >= 0) continue;
    const { numerator, denominator } = here.over(here.minus(there));
    const between = (a: Length, b: Length): Length => a.plus(b.minus(a).times(numerator, denominator));
    kept.push({ x: between(point.x, next.x), y: between(point.y, next.y) });
  }
  return kept;
}

/** Whether two segments pass through each other, not only touch. */
export function areCrossing(first: FlatSegment, second: FlatSegment): boolean {
  const parts = (line: FlatSegment, other: FlatSegment): boolean =>
    sideOf(line, other.from).sign * sideOf(line, other.to).sign < 0;
  return parts(first, second) && parts(second, first);
}
