import { partsOn } from '../closure/overlap.ts';
import { sharedLength } from '../closure/touch.ts';
import { shared } from '../common-parts.ts';
import { areaOf, offLine, type Point2 } from '../flat-polygon.ts';
import { type FoldedShape, foldedPanelOf, foldIn, onPanel, outlineOn } from '../folded-shape.ts';
import type { Fold } from '../net.ts';
import { foldsOf, otherSide } from '../panel-tree.ts';
import { isFlatOn } from '../tube.ts';
import type { Sides } from './sides.ts';
import type { Crossing } from './stack.ts';

/** A shape that lies as it is stacked; `made` are its folds that are closed. */
type Stacked = {
  readonly shape: FoldedShape;
  readonly sides: Sides;
  readonly made: ReadonlySet<Fold>;
  /** Millimeters that don't count. */
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
  const [from, to] = [onPanel(panel, panel.place(fold.from)), onPanel(panel, panel.place(fold.to))];
  const offFold = (point: Point2): number => offLine([from, to], point);
  const inward = Math.sign(outlineOn(panel, panel).reduce((sum, point) => sum + offFold(point), 0));
  const parts = partsOn(panel, foldedPanelOf(shape, between));
  const [past, inside] = [-inward, inward].map((sense) =>
    parts.map((part) => shared(part, beside(from, to, sense, near))),
  );
  const isThrough = [past, inside].every((each) => each?.some((part) => areaOf(part) > near * near));
  return isThrough && past ? Math.max(...past.flat().map((point) => Math.abs(offFold(point)))) : 0;
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
  const line = foldIn(shape, fold);
  return Math.max(
    0,
    ...foldsOf(shape.net, between).map((other) => {
      const further = otherSide(other, between) ?? '';
      if (further === first || further === second || sides.isBetween(further, first, second)) return 0;
      return sharedLength(line, foldIn(shape, other), near);
    }),
  );
}
