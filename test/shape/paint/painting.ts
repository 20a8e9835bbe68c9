import { areaOf } from '../../../src/shape/flat-polygon.ts';
import { type FoldProgress, layDown, sharesOf } from '../../../src/shape/fold.ts';
import type { Net } from '../../../src/shape/net.ts';
import { foldPaper } from '../../../src/shape/paint/paper-sheet.ts';
import { type PaintedFace, paint, USUAL_LOOK } from '../../../src/shape/paint/picture.ts';
import type { PanelLayer } from '../../../src/shape/view/panel-layers.ts';
import { paperOf } from '../../../src/shape/view/paper-of.ts';

type Look = typeof USUAL_LOOK;

/** A painted face by the names of its panel and of the piece that lies there. */
export type NamedFace = Omit<PaintedFace, 'panel'> & {
  readonly panel: string;
  readonly layer: string | undefined;
};

type Circumstances = {
  readonly at?: FoldProgress;
  readonly look?: Look;
  readonly caliper?: number;
  readonly layers?: readonly PanelLayer[];
};

/** The picture of a net in white, folded as far as is said, wholly when nothing is; but for what is seen from its edge. */
export function painted(
  net: Net,
  { at = 1, look = USUAL_LOOK, caliper = 0.24, layers = [] }: Circumstances = {},
): readonly NamedFace[] {
  const white = { outside: '#ffffff', inside: '#ffffff' };
  const named = layers.map((layer) => ({ ...layer, color: layer.piece.id.value }));
  const sheet = paperOf(net, { caliper, layers: named, ...white });
  const { hung } = layDown(net);
  const faces = paint(foldPaper(sheet, sharesOf(hung, at)).tree, look);
  return faces
    .filter(({ points }) => areaOf(points) > 0.01)
    .map((face) => ({
      ...face,
      panel: hung[face.panel]?.panel.id ?? '',
      layer: face.level > 0 ? face.color : undefined,
    }));
}
