import { Length } from '../../measure/length.ts';
import { roundMillimetres } from '../../measure/round.ts';
import type { BaseReference, Piece } from '../../project/model.ts';
import type { FlatPoint, Net, Panel } from '../net.ts';
import { boxCorners } from '../outline.ts';
import { type Layer, panelNamed, type Shapes } from '../shapes.ts';
import { quarterTurn } from '../turning.ts';

/** A layer where it lies on a panel: its outline in the coordinates of the panel's own sheet. */
export type PanelLayer = {
  readonly panel: string;
  readonly piece: Piece;
  readonly outline: readonly FlatPoint[];
};

/**
 * Every layer that lies on a panel of a piece, directly or on another layer, in the order they are stuck on. Layers on
 * a folded piece as a whole lie on no one panel and are left out. Where a layer or its base is turned by anything but
 * quarter turns, its points are rounded to 1/1000 mm.
 */
export function layersOnPanels(shapes: Shapes, piece: string): readonly PanelLayer[] {
  return shapes.layers.flatMap((layer) => {
    const spot = spotOf(layer, shapes, piece);
    return spot
      ? [{ panel: spot.panel, piece: layer.piece, outline: outlineOf(layer, shapes).map(spot.carry) }]
      : [];
  });
}

/** A panel, and the way from a layer's own coordinates to those of the panel's sheet. */
type PanelSpot = { readonly panel: string; readonly carry: (point: FlatPoint) => FlatPoint };

function spotOf(layer: Layer, shapes: Shapes, piece: string): PanelSpot | undefined {
  const base = layer.piece.on?.value;
  const under = base && baseSpot(base, shapes, piece);
  return under && { panel: under.panel, carry: (point) => under.carry(ontoBase(layer, point)) };
}

function baseSpot(base: BaseReference, shapes: Shapes, piece: string): PanelSpot | undefined {
  if (base.piece !== piece) {
    const layer = shapes.layers.find((each) => each.piece.id.value === base.piece);
    return layer && spotOf(layer, shapes, piece);
  }
  const { nets } = shapes;
  const found = base.panel === undefined ? onlyPanel(nets.get(piece)) : panelNamed(nets, base);
  if (!found) return undefined;
  const { left, top } = found.box;
  return { panel: found.id, carry: ({ x, y }) => ({ x: x.plus(left), y: y.plus(top) }) };
}

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
function ontoBase({ left, top, size, turn }: Layer, { x, y }: FlatPoint): FlatPoint {
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
