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

/**
 * What is farther apart than this, in millimeters, is so for certain by floating-point numbers too; only what is nearer
 * needs the exact lengths, which take a hundred times as long.
 */
const SURE = 1e-3;

export function isSamePoint(first: FlatPoint, second: FlatPoint): boolean {
  if (Math.abs(first.x.mm - second.x.mm) > SURE || Math.abs(first.y.mm - second.y.mm) > SURE) return false;
  return first.x.equals(second.x) && first.y.equals(second.y);
}

/** Whether a point lies on a segment, its ends among it. */
export function isOnSegment(segment: FlatSegment, point: FlatPoint): boolean {
  const { from, to } = segment;
  if (isOff(segment, point)) return false;
  const isWithin = (a: Length, b: Length, value: Length): boolean =>
    !value.lessThan(Length.min(a, b)) && !value.greaterThan(Length.max(a, b));
  return (
    isWithin(from.x, to.x, point.x) && isWithin(from.y, to.y, point.y) && sideOf(segment, point).sign === 0
  );
}

/** Whether a point lies off a segment for certain: beyond its ends, or aside of its line. */
function isOff({ from, to }: FlatSegment, { x, y }: FlatPoint): boolean {
  const beyond = (a: number, b: number, value: number): boolean =>
    value < Math.min(a, b) - SURE || value > Math.max(a, b) + SURE;
  if (beyond(from.x.mm, to.x.mm, x.mm) || beyond(from.y.mm, to.y.mm, y.mm)) return true;
  const [across, up] = [to.x.mm - from.x.mm, to.y.mm - from.y.mm];
  const aside = across * (y.mm - from.y.mm) - up * (x.mm - from.x.mm);
  return Math.abs(aside) > SURE * (Math.abs(across) + Math.abs(up));
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
