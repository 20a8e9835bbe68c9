import type { Edition } from '../../edition/editions.ts';
import { Length } from '../../measure/length.ts';
import type { Size } from '../../measure/size.ts';
import type { Piece, Project } from '../../project/model.ts';
import { type Face, faceOf, type Ref } from '../../project/ref.ts';
import { caliperOf, grammageOf, stockOf } from '../../shape/caliper.ts';
import { areaOf } from '../../shape/flat-polygon.ts';
import { forms } from '../../shape/forms/index.ts';
import type { FlatBox, Fold, Net } from '../../shape/net.ts';
import { panelForest, panelOf } from '../../shape/panel-tree.ts';
import type { FlatThing } from './envelopes.ts';

/** A piece that lies flat once it is made, with all that lies on it and in it. */
export type Mailed = FlatThing & {
  readonly piece: Piece;
  readonly isFolded: boolean;
  /** Undefined when the weight of one of its papers is unknown. */
  readonly grams: number | undefined;
};

/** Whether a piece is of a form that goes by mail in this way. */
export function isMailedAs(way: 'card' | 'envelope', { body }: Piece): boolean {
  return body.kind === 'form' && forms.some(({ name, mailed }) => name === body.form.value && mailed === way);
}

/** A piece closed flat, `inside` lying in it; undefined when it cannot be made or does not close on a table. */
export function mailedPiece(edition: Edition, piece: Piece, inside: readonly Piece[]): Mailed | undefined {
  const net = edition.shapes.nets.get(piece.id.value);
  const closed = net && closedFlat(net);
  if (!net || !closed) return undefined;
  return {
    piece,
    isFolded: net.folds.length > 0,
    size: closed.size,
    thickness: closedThickness(edition, piece, closed, inside),
    grams: gramsOf(edition, [...stackOn(edition, piece), ...inside]),
  };
}

/** A piece and everything that lies on it, layer on layer. */
function stackOn({ shapes }: Edition, piece: Piece): readonly Piece[] {
  const stack = [piece];
  const ids = new Set([piece.id.value]);
  for (const layer of shapes.layers) {
    const base = layer.piece.on?.value.piece;
    if (base === undefined || !ids.has(base)) continue;
    ids.add(layer.piece.id.value);
    stack.push(layer.piece);
  }
  return stack;
}

/**
 * About how thick a closed piece is where most lies on most: its own paper, the layers on its panels, and one sheet
 * of each of `inside`. From the papers' thickness, which is itself an estimate where its maker is not asked; adhesive
 * and the air between are not reckoned.
 */
function closedThickness(
  edition: Edition,
  piece: Piece,
  { piles }: ClosedFlat,
  inside: readonly Piece[],
): Length {
  const paper = thicknessOf(edition.project, piece);
  const heights = piles.map((panels) =>
    Length.sum(
      panels.map((panel) => {
        const onFace = (face: Face): Length =>
          layersOn(edition, (base) => faceOf(base) === face && isPanel(base, edition, piece, panel));
        return paper.plus(onFace('outside')).plus(onFace('inside'));
      }),
    ),
  );
  const loose = inside.map((sheet) => thicknessOf(edition.project, sheet).times(sheet.count.value));
  return Length.max(Length.zero, ...heights).plus(Length.sum(loose));
}

function thicknessOf(project: Project, piece: Piece): Length {
  return caliperOf(stockOf(piece, project)).thickness;
}

/** Whether a base is a panel of a piece; on a flat piece that may be the piece itself. */
function isPanel(base: Ref, { shapes }: Edition, { id }: Piece, panel: string): boolean {
  const panels = shapes.nets.get(id.value)?.panels ?? [];
  const named = panels.find((each) => each.id === panel)?.name ?? panel;
  return base.piece === id.value && (base.part ?? (panels.length === 1 ? named : undefined)) === named;
}

/** The tallest pile of layers on a base. */
function layersOn(edition: Edition, isBase: (base: Ref) => boolean): Length {
  const layers = edition.shapes.layers.filter(({ on }) => isBase(on));
  const piles = layers.map(({ piece }) => {
    const above = layersOn(edition, (base) => base.piece === piece.id.value && base.part === undefined);
    return thicknessOf(edition.project, piece).plus(above);
  });
  return Length.max(Length.zero, ...piles);
}

/** Grams of some pieces together; undefined when the weight of any paper is unknown. */
function gramsOf({ project, shapes }: Edition, pieces: readonly Piece[]): number | undefined {
  let grams = 0;
  for (const piece of pieces) {
    const weight = stockOf(piece, project)?.weight;
    const net = shapes.nets.get(piece.id.value);
    if (!weight || !net) return undefined;
    grams += (grammageOf(weight.value) * squareMillimetres(net) * piece.count.value) / 1_000_000;
  }
  return grams;
}

/** What is left of a net once its waste is cut away. */
function squareMillimetres({ panels }: Net): number {
  return panels.reduce(
    (total, { outline }) => total + areaOf(outline.map(({ x, y }) => ({ x: x.mm, y: y.mm }))),
    0,
  );
}

/** A net folded shut on a table: its outer size, and which panels lie on one another at each place. */
type ClosedFlat = {
  readonly size: Size;
  /** The ids of the panels over each place that differs from its neighbours. */
  readonly piles: readonly (readonly string[])[];
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
  const across = boxes.flatMap(({ box }) => [box.left, box.right]);
  const down = boxes.flatMap(({ box }) => [box.top, box.bottom]);
  return {
    size: { width: spanOf(across), height: spanOf(down) },
    // Between any two neighbouring edges nothing changes, so one place there stands for all.
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

function spanOf([first = Length.zero, ...others]: readonly Length[]): Length {
  return Length.max(first, ...others).minus(Length.min(first, ...others));
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
