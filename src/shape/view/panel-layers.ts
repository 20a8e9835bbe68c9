import type { BaseReference, Piece } from '../../project/model.ts';
import { onlyPanel, ontoBase, outlineOf } from '../layer-outline.ts';
import type { FlatPoint } from '../net.ts';
import { type Layer, panelNamed, type Shapes } from '../shapes.ts';

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
