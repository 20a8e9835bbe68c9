import { Length } from '../measure/length.ts';
import type { Size } from '../measure/size.ts';
import { boundsOf, boxSize, type FlatBox, type FlatPoint, type Fold, type Net } from './net.ts';
import { boxCorners } from './outline.ts';
import { panelForest, panelOf } from './panel-tree.ts';

/** A net folded shut on a table: its outer size, and which panels lie on one another at each place. */
export type ClosedFlat = {
  readonly size: Size;
  /** The ids of the panels over each place that differs from its neighbors. */
  readonly piles: readonly (readonly string[])[];
  /** How far it reaches, where its first panel stays where it lay on the flat sheet. */
  readonly box: FlatBox;
  /** Where a point of a panel, as it lay on the flat sheet, has come to; undefined for no panel of it. */
  readonly place: (panel: string, point: FlatPoint) => FlatPoint | undefined;
};

/** Where positions on the flat sheet come to lie, across and down. */
type FlatPose = { readonly [Axis in 'x' | 'y']: (position: Length) => Length };

const AS_IS: FlatPose = { x: (position) => position, y: (position) => position };

/**
 * Closes every fold of a net flat, exactly. Folds that are scored but left flat stay open. Undefined for a net that
 * is in several parts or has a fold that runs at a slant.
 */
export function closedFlat(net: Net): ClosedFlat | undefined {
  const [first] = net.panels;
  if (!first) return undefined;
  const { trees } = panelForest(net, first.id);
  const [tree] = trees;
  if (!tree || trees.length > 1 || !net.folds.every(isStraight)) return undefined;
  const laid = new Map<string, FlatPose>([[first.id, AS_IS]]);
  for (const { fold, parent, child } of tree.joints) {
    const held = laid.get(parent);
    if (held) laid.set(child, turnedOver(held, fold));
  }
  const boxes = [...laid].map(([id, place]) => ({ id, box: boxAt(panelOf(net, id).box, place) }));
  const box = boundsOf(boxes.flatMap((each) => boxCorners(each.box)));
  const across = boxes.flatMap(({ box }) => [box.left, box.right]);
  const down = boxes.flatMap(({ box }) => [box.top, box.bottom]);
  return {
    // Of a flat piece, the sheet it is cut from: an outline within it may be smaller by a hair.
    size: net.folds.length === 0 ? net.size : boxSize(box),
    box,
    place: (panel, { x, y }) => {
      const pose = laid.get(panel);
      return pose && { x: pose.x(x), y: pose.y(y) };
    },
    // Between any two neighboring edges nothing changes, so one place there stands for all.
    piles: middles(across).flatMap((x) =>
      middles(down).map((y) => boxes.filter(({ box }) => covers(box, x, y)).map(({ id }) => id)),
    ),
  };
}

function isStraight({ from, to }: Fold): boolean {
  return from.x.equals(to.x) || from.y.equals(to.y);
}

/** A child is mirrored at its fold, then laid as its parent is. */
function turnedOver(held: FlatPose, { from, to, angle }: Fold): FlatPose {
  if (angle === 0) return held;
  const axis = from.x.equals(to.x) ? 'x' : 'y';
  return { ...held, [axis]: (position: Length) => held[axis](from[axis].times(2).minus(position)) };
}

function boxAt({ left, top, right, bottom }: FlatBox, { x, y }: FlatPose): FlatBox {
  return {
    left: Length.min(x(left), x(right)),
    right: Length.max(x(left), x(right)),
    top: Length.min(y(top), y(bottom)),
    bottom: Length.max(y(top), y(bottom)),
  };
}

function middles(edges: readonly Length[]): Length[] {
  const sorted = edges.toSorted((a, b) => a.compare(b));
  return sorted.slice(1).flatMap((edge, index) => {
    const before = sorted[index];
    return before?.lessThan(edge) ? [before.plus(edge).half()] : [];
  });
}

function covers({ left, top, right, bottom }: FlatBox, x: Length, y: Length): boolean {
  return left.lessThan(x) && x.lessThan(right) && top.lessThan(y) && y.lessThan(bottom);
}
