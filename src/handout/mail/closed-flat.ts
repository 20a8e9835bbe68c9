import { Length } from '../../measure/length.ts';
import type { Size } from '../../measure/size.ts';
import type { FlatBox, Fold, Net } from '../../shape/net.ts';
import { panelForest, panelOf } from '../../shape/panel-tree.ts';

/** A net folded shut on a table: its outer size, and which panels lie on one another at each place. */
export type ClosedFlat = {
  readonly size: Size;
  /** The ids of the panels over each place that differs from its neighbours. */
  readonly piles: readonly (readonly string[])[];
};

/** A position on the flat sheet is mirrored or not, then shifted. */
type Axis = { readonly mirrored: boolean; readonly shift: Length };
type Laid = { readonly x: Axis; readonly y: Axis };

const ASIS: Axis = { mirrored: false, shift: Length.zero };

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
  const laid = new Map<string, Laid>([[first.id, { x: ASIS, y: ASIS }]]);
  for (const { fold, parent, child } of tree.joints) {
    const held = laid.get(parent);
    if (held) laid.set(child, turnedOver(held, fold));
  }
  const boxes = [...laid].map(([id, place]) => ({ id, box: boxAt(panelOf(net, id).box, place) }));
  return { size: extent(boxes.map(({ box }) => box)), piles: pilesOf(boxes) };
}

function isStraight({ from, to }: Fold): boolean {
  return from.x.equals(to.x) || from.y.equals(to.y);
}

/** A child is mirrored at its fold, then laid as its parent is. */
function turnedOver({ x, y }: Laid, { from, to, angle }: Fold): Laid {
  if (angle === 0) return { x, y };
  return from.x.equals(to.x) ? { x: mirroredAt(from.x, x), y } : { x, y: mirroredAt(from.y, y) };
}

function mirroredAt(line: Length, axis: Axis): Axis {
  const twice = line.times(2);
  return {
    mirrored: !axis.mirrored,
    shift: axis.mirrored ? axis.shift.minus(twice) : axis.shift.plus(twice),
  };
}

function at(position: Length, { mirrored, shift }: Axis): Length {
  return mirrored ? shift.minus(position) : shift.plus(position);
}

function boxAt({ left, top, right, bottom }: FlatBox, { x, y }: Laid): FlatBox {
  const [x1, x2, y1, y2] = [at(left, x), at(right, x), at(top, y), at(bottom, y)];
  return {
    left: Length.min(x1, x2),
    right: Length.max(x1, x2),
    top: Length.min(y1, y2),
    bottom: Length.max(y1, y2),
  };
}

function extent(boxes: readonly FlatBox[]): Size {
  const [first, ...others] = boxes;
  if (!first) return { width: Length.zero, height: Length.zero };
  const least = (side: 'left' | 'top'): Length => Length.min(first[side], ...others.map((box) => box[side]));
  const most = (side: 'right' | 'bottom'): Length =>
    Length.max(first[side], ...others.map((box) => box[side]));
  return { width: most('right').minus(least('left')), height: most('bottom').minus(least('top')) };
}

type Placed = { readonly id: string; readonly box: FlatBox };

/** Between any two neighbouring edges nothing changes, so one place there stands for all. */
function pilesOf(boxes: readonly Placed[]): readonly (readonly string[])[] {
  const across = middles(boxes.flatMap(({ box }) => [box.left, box.right]));
  const down = middles(boxes.flatMap(({ box }) => [box.top, box.bottom]));
  return across.flatMap((x) =>
    down.map((y) => boxes.filter(({ box }) => covers(box, x, y)).map(({ id }) => id)),
  );
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
