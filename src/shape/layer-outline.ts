import { Length } from '../measure/length.ts';
import { roundMillimetres } from '../measure/round.ts';
import type { FlatPoint, Net, Panel } from './net.ts';
import { boxCorners } from './outline.ts';
import type { Layer, Shapes } from './shapes.ts';
import { quarterTurn } from './turning.ts';

/** The panel of a net that has but one. */
export function onlyPanel(net: Net | undefined): Panel | undefined {
  return net?.panels.length === 1 ? net.panels[0] : undefined;
}

/** From the layer's own top left. */
export function outlineOf({ piece, size: { width, height } }: Layer, { nets }: Shapes): readonly FlatPoint[] {
  const corners = boxCorners({ left: Length.zero, top: Length.zero, right: width, bottom: height });
  return onlyPanel(nets.get(piece.id.value))?.outline ?? corners;
}

/** A point of a layer, from the layer's own top left, on its base. */
export function ontoBase({ left, top, size, turn }: Layer, { x, y }: FlatPoint): FlatPoint {
  if (turn === 0) return { x: x.plus(left), y: y.plus(top) };
  const [halfWidth, halfHeight] = [size.width.half(), size.height.half()];
  const { x: across, y: down } = turnedBy(turn, { x: x.minus(halfWidth), y: y.minus(halfHeight) });
  return { x: across.plus(left).plus(halfWidth), y: down.plus(top).plus(halfHeight) };
}

function turnedBy(degrees: number, { x, y }: FlatPoint): FlatPoint {
  const quarters = degrees / 90;
  if (Number.isInteger(quarters)) return quarterTurn({ x, y }, quarters);
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return {
    x: roundMillimetres(x.mm * cos - y.mm * sin, 1000),
    y: roundMillimetres(x.mm * sin + y.mm * cos, 1000),
  };
}
