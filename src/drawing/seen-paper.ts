import type { Edition } from '../edition/editions.ts';
import { caliperOf, stockOf } from '../shape/caliper.ts';
import { areaOf } from '../shape/flat-polygon.ts';
import { type Look, type PaintedFace, paint } from '../shape/paint/picture.ts';
import type { PlaneTree } from '../shape/paint/plane-tree.ts';
import { layersOnPanels } from '../shape/view/panel-layers.ts';
import type { PaperLook } from '../shape/view/paper-of.ts';
import { colorOf } from './style.ts';
import { tint } from './tint.ts';

/** Square millimeters; a face seen from its edge has no more. */
const EDGE_ON = 0.01;

/** The faces of a folded sheet in the order to paint them, without those seen from their edge. */
export function facesSeen(tree: PlaneTree | undefined, look: Look): readonly PaintedFace[] {
  return paint(tree, look).filter(({ points }) => areaOf(points) > EDGE_ON);
}

/** The paper a piece is of and the layers on it but some, in the colors of their stocks. */
export function paperLook(edition: Edition, piece: string, but: ReadonlySet<string> = new Set()): PaperLook {
  const { project, shapes } = edition;
  const stock = stockOf(project.pieces.get(piece), project);
  const outside = tint(colorOf(edition, piece));
  return {
    caliper: caliperOf(stock).thickness.mm,
    outside,
    // A printed pattern is on one side of its paper.
    inside: stock?.print ? tint() : outside,
    layers: layersOnPanels(shapes, piece)
      .filter((layer) => !but.has(layer.piece.id.value))
      .map((layer) => ({ ...layer, color: tint(colorOf(edition, layer.piece.id.value)) })),
  };
}
