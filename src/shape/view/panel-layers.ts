import type { Piece } from '../../project/model.ts';
import { type Face, faceOf } from '../../project/ref.ts';
import { onSheet, openingsOf, outlineOf } from '../layer-outline.ts';
import type { FlatPoint } from '../net.ts';
import type { Layer, Shapes } from '../shapes.ts';

/** A layer where it lies on a panel: its outline in the coordinates of the panel's own sheet. */
export type PanelLayer = {
  readonly panel: string;
  /** The side of the panel's paper that it is on. */
  readonly face: Face;
  readonly piece: Piece;
  readonly outline: readonly FlatPoint[];
  readonly openings: readonly (readonly FlatPoint[])[];
};

/**
 * Every layer that lies on a panel of a piece, directly or on another layer, in the order they are stuck on; what is
 * behind another layer lies under it. Layers on a folded piece as a whole lie on no one panel and are left out. Where a
 * layer or its base is turned by anything but quarter turns, its points are rounded to 1/1000 mm.
 */
export function layersOnPanels(shapes: Shapes, piece: string): readonly PanelLayer[] {
  const laid: PanelLayer[] = [];
  for (const layer of shapes.layers) {
    const spot = spotOf(layer, shapes, piece);
    if (!spot) continue;
    const over = overIt(layer, shapes);
    const place = laid.findIndex(({ piece: { id } }) => id.value === over);
    const outline = outlineOf(layer, shapes).map(spot.carry);
    const openings = openingsOf(layer, shapes).map((hole) => hole.map(spot.carry));
    laid.splice(place < 0 ? laid.length : place, 0, { ...spot.on, piece: layer.piece, outline, openings });
  }
  return laid;
}

/** The piece that a layer comes to lie under: the one it is behind, or that its own base is behind. */
function overIt({ on }: Layer, shapes: Shapes): string | undefined {
  if (on.face === 'behind') return on.piece;
  const base = shapes.layers.find(({ piece }) => piece.id.value === on.piece);
  if (base?.on.face !== 'behind') return undefined;
  return base.under.opening ? on.piece : base.on.piece;
}

/** A panel, and the way from a layer's own coordinates to those of the panel's sheet. */
type PanelSpot = {
  readonly on: Pick<PanelLayer, 'panel' | 'face'>;
  readonly carry: (point: FlatPoint) => FlatPoint;
};

function spotOf(layer: Layer, shapes: Shapes, piece: string): PanelSpot | undefined {
  const { on } = layer;
  const spot = on.piece === piece ? ownSpot(layer) : spotUnder(on.piece, shapes, piece);
  return spot && { ...spot, carry: (point) => spot.carry(onSheet(layer, point)) };
}

/** The panel of the piece itself, in whose sheet all is measured. */
function ownSpot({ under: { panel }, on }: Layer): PanelSpot | undefined {
  return panel && { on: { panel: panel.id, face: faceOf(on) }, carry: (point) => point };
}

/** What another layer lies on. */
function spotUnder(id: string, shapes: Shapes, piece: string): PanelSpot | undefined {
  const base = shapes.layers.find((each) => each.piece.id.value === id);
  return base && spotOf(base, shapes, piece);
}
