import { Length } from '../measure/length.ts';
import { roundMillimeters } from '../measure/round.ts';
import { type Face, faceOf, type Ref } from '../project/ref.ts';
import type { Lying } from './lying.ts';
import type { FlatBox, FlatPoint, Panel } from './net.ts';
import { boxCorners } from './outline.ts';
import { type Layer, onlyPanel, type Shapes, type Under } from './shapes.ts';
import { ownNet } from './sheets.ts';
import { quarterTurn } from './turning.ts';

/** From the layer's own top left. */
export function outlineOf({ piece, size: { width, height } }: Layer, { nets }: Shapes): readonly FlatPoint[] {
  const corners = boxCorners({ left: Length.zero, top: Length.zero, right: width, bottom: height });
  const panel = onlyPanel(ownNet(nets, piece.id.value));
  return panel ? fromBox(panel) : corners;
}

/** A panel's outline, from the left and top of its box. */
export function fromBox({ outline, box: { left, top } }: Panel): readonly FlatPoint[] {
  return outline.map(({ x, y }) => ({ x: x.minus(left), y: y.minus(top) }));
}

/** A point of what lies on a base, from its own top left, on that base. */
export function ontoBase({ left, top, size, turn }: Lying, { x, y }: FlatPoint): FlatPoint {
  if (turn === 0) return { x: x.plus(left), y: y.plus(top) };
  const [halfWidth, halfHeight] = [size.width.half(), size.height.half()];
  const { x: across, y: down } = turnedBy(turn, { x: x.minus(halfWidth), y: y.minus(halfHeight) });
  return { x: across.plus(left).plus(halfWidth), y: down.plus(top).plus(halfHeight) };
}

/** A point of a layer, from its own top left, on the sheet it lies on. What is behind something lies on its face. */
export function onSheet(layer: Layer, { x, y }: FlatPoint): FlatPoint {
  const { under, on, size } = layer;
  const own = { x: on.face === 'behind' ? size.width.minus(x) : x, y };
  return ontoSheet(sheetFace(under, on), ontoBase(layer, own));
}

/** Its openings, from its own top left. */
export function openingsOf({ piece }: Layer, { nets }: Shapes): readonly (readonly FlatPoint[])[] {
  const net = ownNet(nets, piece.id.value);
  const panel = onlyPanel(net);
  if (!net || !panel) return [];
  const { left, top } = panel.box;
  return (net.openings ?? []).map(({ outline }) =>
    outline.map(({ x, y }) => ({ x: x.minus(left), y: y.minus(top) })),
  );
}

/** What is measured on, where it lies on its sheet, and which side of that is looked at. */
type SheetFace = { readonly box: FlatBox; readonly face: Face };

/** The face that a base is; of a folded sheet as a whole, all of it. */
export function sheetFace({ net, panel }: Under, on: Ref): SheetFace {
  const { width, height } = net.size;
  const whole = { left: Length.zero, top: Length.zero, right: width, bottom: height };
  return { box: panel?.box ?? whole, face: faceOf(on) };
}

/** A point of a face, from the left and the top as you look at it, on the flat sheet. */
export function ontoSheet({ box, face }: SheetFace, { x, y }: FlatPoint): FlatPoint {
  return { x: face === 'inside' ? box.right.minus(x) : box.left.plus(x), y: box.top.plus(y) };
}

function turnedBy(degrees: number, { x, y }: FlatPoint): FlatPoint {
  const quarters = degrees / 90;
  if (Number.isInteger(quarters)) return quarterTurn({ x, y }, quarters);
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return {
    x: roundMillimeters(x.mm * cos - y.mm * sin, 1000),
    y: roundMillimeters(x.mm * sin + y.mm * cos, 1000),
  };
}
