import { axesOf, onAxes } from '../closure/overlap.ts';
import { areaOf, convexParts, type Point2, shared } from '../flat-polygon.ts';
import { type FoldedPanel, type FoldedShape, foldedPanelOf } from '../fold.ts';
import type { Fold } from '../net.ts';
import { distanceFromLine, type Point3 } from '../space.ts';
import { isFlatOn } from '../tube.ts';
import type { Sides } from './sides.ts';

/** A fold that cannot be closed, because paper between its two panels reaches past it, `by` millimetres. */
export type Crossing = { readonly fold: Fold; readonly between: string; readonly by: number };

/** A shape that lies as it is stacked; `made` are its folds that are closed. */
type Stacked = {
  readonly shape: FoldedShape;
  readonly sides: Sides;
  readonly made: ReadonlySet<Fold>;
  /** Millimetres that don't count. */
  readonly near: number;
};

/** Every closed fold that has paper in it which cannot be there. */
export function crossingsOf(stacked: Stacked): readonly Crossing[] {
  const { shape, sides, made } = stacked;
  return shape.net.folds.filter(isFlatOn).flatMap((fold): Crossing[] => {
    const [first, second] = fold.panels;
    // A fold that closes a ring is made by those on the way round.
    if (!made.has(fold) && sides.of(first, second) === undefined) return [];
    return sides
      .on(first)
      .filter((id) => sides.isBetween(id, first, second))
      .flatMap((between) => {
        const by = Math.max(reachPast(stacked, fold, between), leaves(stacked, fold, between));
        return by > stacked.near ? [{ fold, between, by }] : [];
      });
  });
}

/** How far a panel that lies in a fold reaches past its line. */
function reachPast({ shape, near }: Stacked, fold: Fold, between: string): number {
  const panel = foldedPanelOf(shape, fold.panels[0]);
  const axes = axesOf(panel);
  if (!axes) return 0;
  const [from, to] = [fold.from, fold.to].map((end) => onAxes(axes, panel.place(end)));
  const own = panel.corners.map((corner) => onAxes(axes, corner));
  if (!from || !to) return 0;
  const inward = Math.sign(own.reduce((sum, point) => sum + sideOfLine(from, to, point), 0));
  const outside = beside(from, to, -inward, near);
  const other = foldedPanelOf(shape, between).corners.map((corner) => onAxes(axes, corner));
  const past = convexParts(other).map((part) => shared(part, outside));
  const inside = convexParts(other).map((part) => shared(part, beside(from, to, inward, near)));
  const isThrough = [past, inside].every((parts) => parts.some((part) => areaOf(part) > near * near));
  if (!isThrough) return 0;
  return Math.max(...past.flat().map((point) => Math.abs(sideOfLine(from, to, point))));
}

/** How far a point lies off a line, positive to one side of it. */
function sideOfLine(from: Point2, to: Point2, { x, y }: Point2): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  return (dx * (y - from.y) - dy * (x - from.x)) / Math.hypot(dx, dy);
}

const FAR = 10_000;

/** All that lies beside a stretch of a line, on one side, farther off than a margin. */
function beside(from: Point2, to: Point2, sense: number, margin: number): Point2[] {
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  const [ax, ay] = [(to.x - from.x) / long, (to.y - from.y) / long];
  const [nx, ny] = [-ay * sense, ax * sense];
  const at = (end: Point2, along: number, off: number): Point2 => ({
    x: end.x + ax * along + nx * off,
    y: end.y + ay * along + ny * off,
  });
  return [at(from, margin, margin), at(to, -margin, margin), at(to, -margin, FAR), at(from, margin, FAR)];
}

/**
 * Another fold along the very line of one that is closed: both its panels lie between the first one's, or neither. How
 * far it runs along it if only one does.
 */
function leaves({ shape, sides, near }: Stacked, fold: Fold, between: string): number {
  const [first, second] = fold.panels;
  const line = endsOf(shape, fold);
  const along = shape.net.folds.filter(({ panels }) => panels.includes(between));
  return Math.max(
    0,
    ...along.map((other) => {
      const [a, b] = other.panels;
      const further = a === between ? b : a;
      if (further === first || further === second) return 0;
      if (sides.isBetween(further, first, second)) return 0;
      return sharedStretch(line, endsOf(shape, other), near);
    }),
  );
}

function endsOf(shape: FoldedShape, { panels: [panel], from, to }: Fold): readonly [Point3, Point3] {
  const { place }: FoldedPanel = foldedPanelOf(shape, panel);
  return [place(from), place(to)];
}

/** How long two stretches run together, if they lie on one line. */
function sharedStretch(
  line: readonly [Point3, Point3],
  other: readonly [Point3, Point3],
  near: number,
): number {
  if (other.some((end) => distanceFromLine(line, end) > near)) return 0;
  const [from, to] = line;
  const long = Math.hypot(to.x - from.x, to.y - from.y, to.z - from.z);
  const places = other.map(
    (end) =>
      ((end.x - from.x) * (to.x - from.x) +
        (end.y - from.y) * (to.y - from.y) +
        (end.z - from.z) * (to.z - from.z)) /
      long,
  );
  return Math.min(long, Math.max(...places)) - Math.max(0, Math.min(...places));
}
