import { Length } from '../measure/length.ts';
import { type Corner, type RoundedCorners, roundingAt } from '../project/corners.ts';
import type { Edge } from '../project/net-as-written.ts';
import { sideOf } from './exact.ts';
import type { FlatBox, FlatPoint } from './net.ts';
import { fitRadii } from './rounding.ts';

/** Which sides of a cell are score lines it hangs by. */
export type Hinges = Readonly<Record<Edge, boolean>>;

/** How the free corners of a cell are cut: those where neither side is a hinge. */
export type CornerCut =
  | { readonly kind: 'square' }
  | { readonly kind: 'taper' }
  | { readonly kind: 'round'; readonly corners: RoundedCorners };

/** A cell's outline after its corners are cut, and the corner pieces that fall away. */
type CutCell = {
  readonly outline: readonly FlatPoint[];
  readonly waste: readonly (readonly FlatPoint[])[];
};

/** A taper never takes more than this off the free edge at one corner (common practice: 1/8 to 1/4 in). */
const MOST_TAPER: Length = Length.of(1, 4, 'in');

/** Straight stretches that stand for a rounded corner; every point lies exactly on the arc. */
const ARC_STRETCHES = 16;

type CellCorner = {
  readonly at: FlatPoint;
  readonly before: FlatPoint;
  readonly after: FlatPoint;
  readonly hingeBefore: boolean;
  readonly hingeAfter: boolean;
  /** The side towards `before` (or `after`) ends on a hinge. */
  readonly heldBefore: boolean;
  readonly heldAfter: boolean;
};

/**
 * The outline of a cell, clockwise from its top left corner, with its free corners cut.
 *
 * A tapered flap is cut straight from the end of its hinge to the free edge, a quarter of its depth in (about 14°),
 * at most 1/4 in and at most a quarter of the free edge at each end. Where a free corner has no hinge at the end of
 * exactly one of its sides, both sides are cut back alike.
 */
export function cutCell(box: FlatBox, { top, right, bottom, left }: Hinges, cut: CornerCut): CutCell {
  return cutCorners(boxCorners(box), [top, right, bottom, left], cut);
}

/** The same of any outline, clockwise, at its square corners; `hinges` says of each side, from its corner on, whether it is one. */
export function cutCorners(
  corners: readonly FlatPoint[],
  hinges: readonly boolean[],
  cut: CornerCut,
): CutCell {
  const outline: FlatPoint[] = [];
  const waste: FlatPoint[][] = [];
  const all = cornersOf(corners, hinges);
  const radii = cut.kind === 'round' ? radiiAt(all, cut.corners) : [];
  for (const [index, corner] of all.entries()) {
    const radius = radii[index];
    const isTapered = cut.kind === 'taper' && isFree(corner);
    const points = isTapered ? taper(corner) : radius?.sign ? arc(corner, radius) : [corner.at];
    outline.push(...points);
    if (points.length > 1) waste.push([corner.at, ...points.toReversed()]);
  }
  return { outline: withoutDoubles(outline), waste };
}

type PlanePoint<T> = { readonly x: T; readonly y: T };

/** The corners of a box, clockwise from the top left. */
export function boxCorners<T>(
  box: Readonly<Record<Edge, T>>,
): readonly [PlanePoint<T>, PlanePoint<T>, PlanePoint<T>, PlanePoint<T>] {
  return [
    { x: box.left, y: box.top },
    { x: box.right, y: box.top },
    { x: box.right, y: box.bottom },
    { x: box.left, y: box.bottom },
  ];
}

function cornersOf(outline: readonly FlatPoint[], hinges: readonly boolean[]): CellCorner[] {
  const count = outline.length;
  const isHinge = (side: number): boolean => hinges[(side + count) % count] ?? false;
  return outline.map((at, index) => ({
    at,
    before: outline.at(index - 1) ?? at,
    after: outline[(index + 1) % count] ?? at,
    heldBefore: isHinge(index - 2),
    hingeBefore: isHinge(index - 1),
    hingeAfter: isHinge(index),
    heldAfter: isHinge(index + 1),
  }));
}

/** Whether both sides of a corner run with the edges of the sheet, and it points out of the outline. */
function isSquare({ before, at, after }: CellCorner): boolean {
  const isLevel = (a: FlatPoint, b: FlatPoint): boolean => a.x.equals(b.x) || a.y.equals(b.y);
  return isLevel(before, at) && isLevel(at, after) && sideOf({ from: before, to: at }, after).sign > 0;
}

function isFree(corner: CellCorner): boolean {
  return !corner.hingeBefore && !corner.hingeAfter && isSquare(corner);
}

/** The radius of each corner, as large as there is room for; nothing where it is none that is rounded. */
function radiiAt(corners: readonly CellCorner[], rounded: RoundedCorners): readonly Length[] {
  const wanted = corners.map((corner) =>
    isFree(corner) ? (roundingAt(rounded, nameOf(corner))?.radius.value ?? Length.zero) : Length.zero,
  );
  return fitRadii(
    wanted,
    corners.map(({ at, after }) => span(at, after)),
  );
}

/** Which corner of a box a square one is like. */
function nameOf({ at, before, after }: CellCorner): Corner {
  const isLeft = Length.max(before.x, after.x).greaterThan(at.x);
  const isTop = Length.max(before.y, after.y).greaterThan(at.y);
  return `${isTop ? 'top' : 'bottom'} ${isLeft ? 'left' : 'right'}`;
}

function taper(corner: CellCorner): FlatPoint[] {
  const before = span(corner.at, corner.before);
  const after = span(corner.at, corner.after);
  const { heldBefore, heldAfter } = corner;
  const oneSide = heldBefore !== heldAfter;
  const least = Length.min(before, after);
  const [depth, edge] = oneSide ? (heldBefore ? [before, after] : [after, before]) : [least, least];
  const back = Length.min(MOST_TAPER, depth.times(1, 4), edge.times(1, 4));
  const cutBefore = oneSide && heldBefore ? before : back;
  const cutAfter = oneSide && heldAfter ? after : back;
  return [towards(corner.at, corner.before, cutBefore), towards(corner.at, corner.after, cutAfter)];
}

/**
 * The rounded corner from the side before to the side after. The circle's rational points,
 * ((1 − t²)/(1 + t²), 2t/(1 + t²)), keep every coordinate exact.
 */
function arc(corner: CellCorner, radius: Length): FlatPoint[] {
  const points: FlatPoint[] = [];
  for (let step = 0; step <= ARC_STRETCHES; step++) {
    const bottom = ARC_STRETCHES ** 2 + step ** 2;
    const alongBefore = radius.minus(radius.times(2 * ARC_STRETCHES * step, bottom));
    const alongAfter = radius.minus(radius.times(ARC_STRETCHES ** 2 - step ** 2, bottom));
    const shifted = towards(corner.at, corner.before, alongBefore);
    points.push(towards(shifted, offsetBy(shifted, corner.at, corner.after), alongAfter));
  }
  return points;
}

function offsetBy(from: FlatPoint, origin: FlatPoint, target: FlatPoint): FlatPoint {
  return { x: from.x.plus(target.x.minus(origin.x)), y: from.y.plus(target.y.minus(origin.y)) };
}

/** The length of an axis-parallel side. */
function span(a: FlatPoint, b: FlatPoint): Length {
  return Length.max(a.x.minus(b.x).abs(), a.y.minus(b.y).abs());
}

/** A point `distance` from `start` along the axis-parallel way to `end`. */
function towards(start: FlatPoint, end: FlatPoint, distance: Length): FlatPoint {
  const across = end.x.compare(start.x);
  const down = end.y.compare(start.y);
  return { x: start.x.plus(distance.times(across)), y: start.y.plus(distance.times(down)) };
}

/** An outline without a point that repeats the one before it. */
export function withoutDoubles(points: readonly FlatPoint[]): FlatPoint[] {
  return points.filter((point, index) => {
    const previous = points.at(index - 1);
    return !previous || !(point.x.equals(previous.x) && point.y.equals(previous.y));
  });
}
