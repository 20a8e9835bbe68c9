import { Length } from '../../measure/length.ts';
import { type FoldedShape, foldedPanelOf, foldIn } from '../folded-shape.ts';
import type { FlatBox, FlatPoint, Net } from '../net.ts';
import { boxCorners } from '../outline.ts';
import { panelOf } from '../panel-tree.ts';
import { distanceFromLine } from '../space.ts';
import { cornersOf, positionOf, reachFrom, type Tube, type TubeSide } from '../tube.ts';
import { nearlyEqual, tolerance } from './tolerance.ts';

/** Two sides that face each other and differ: `first` comes before `second` in the row. */
export type UnequalWalls = {
  readonly first: TubeSide;
  readonly second: TubeSide;
  readonly widths: readonly [Length, Length];
};

/** How a tube comes round to its start. */
type SeamFit =
  | { readonly kind: 'closes' }
  /** Four square corners, but facing walls differ. */
  | { readonly kind: 'unequal'; readonly walls: readonly UnequalWalls[] }
  /** The folds add up to something else than full circle. */
  | { readonly kind: 'turn'; readonly degrees: number }
  /** The tab's fold misses the free edge it should lie on by this many millimeters. */
  | { readonly kind: 'misses'; readonly by: number };

/** No glue tab is made wider without need. Common practice, no source. */
export const WIDEST_TAB: Length = Length.of(3, 4, 'in');
/** The share of a side that is meant to be all of it, if it is off by a slip. */
const LEAST_WALL = 3 / 4;

/** Whether a tube closes: its walls come full circle and its tab's fold lies on the first wall's free edge. */
export function seamFit(shape: FoldedShape, tube: Tube, caliper: Length): SeamFit {
  if (Math.abs(Math.abs(tube.turn) - 360) > 1) return { kind: 'turn', degrees: Math.abs(tube.turn) };
  const overlapsAnywhere = isLap(shape.net, tube);
  const walls = isSquare(tube) ? unequalWalls(shape.net, tube, caliper, overlapsAnywhere) : [];
  if (walls.length > 0) return { kind: 'unequal', walls };
  if (overlapsAnywhere) return { kind: 'closes' };
  const by = seamGap(shape, tube);
  return by > tolerance(caliper).mm ? { kind: 'misses', by } : { kind: 'closes' };
}

/** Four sides with a right angle at every corner. */
export function isSquare(tube: Tube): boolean {
  return tube.sides.length === 4 && cornersOf(tube).every(({ fold }) => fold.angle === 90);
}

/** A side's extent round the tube; sides are counted on past the last. */
export function sideWidth(net: Net, tube: Tube, side: number): Length {
  const walls = tube.sides[side % tube.sides.length] ?? [];
  return Length.sum(walls.map((wall) => reachFrom(tube.lines, net, wall)));
}

function unequalWalls(net: Net, tube: Tube, caliper: Length, freeStart: boolean): UnequalWalls[] {
  return [0, 1].slice(freeStart ? 1 : 0).flatMap((side) => {
    const [first, second] = [tube.sides[side], tube.sides[side + 2]];
    const widths = [sideWidth(net, tube, side), sideWidth(net, tube, side + 2)] as const;
    return first && second && !nearlyEqual(...widths, caliper) ? [{ first, second, widths }] : [];
  });
}

/**
 * Whether the two ends of a row overlap somewhere in the middle of a side, as those of a band do, or the flap of an
 * envelope: the last is wider than a tab is made, and in a box the first is far from making up the side.
 */
export function isLap(net: Net, tube: Tube): boolean {
  const isPlain = panelOf(net, tube.tab).outline.length === 4;
  if (!isPlain || !reachFrom(tube.lines, net, tube.tab).greaterThan(WIDEST_TAB)) return false;
  return !isSquare(tube) || sideWidth(net, tube, 0).mm < LEAST_WALL * sideWidth(net, tube, 2).mm;
}

/** How far the tab's fold comes to lie from the first wall's free edge. */
function seamGap(shape: FoldedShape, tube: Tube): number {
  const [first] = tube.joints;
  const last = tube.joints.at(-1);
  const start = tube.walls[0];
  if (!first || !last || start === undefined) return 0;
  const wall = foldedPanelOf(shape, start);
  const [from, to] = freeEdge(wall.panel.box, tube, positionOf(first.fold));
  const edge = [wall.place(from), wall.place(to)] as const;
  return Math.max(...foldIn(shape, last.fold).map((end) => distanceFromLine(edge, end)));
}

/** The edge of the first wall on the far side of its fold. */
function freeEdge(box: FlatBox, { lines }: Tube, fold: Length): readonly [FlatPoint, FlatPoint] {
  const [near, far] = lines === 'upright' ? (['left', 'right'] as const) : (['top', 'bottom'] as const);
  const at = fold.equals(box[near]) ? box[far] : box[near];
  const [from, , to] = boxCorners({ ...box, [near]: at, [far]: at });
  return [from, to];
}
