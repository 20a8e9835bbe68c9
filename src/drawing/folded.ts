import type { Edition, Editions } from '../edition/editions.ts';
import type { Length } from '../measure/length.ts';
import { roundFolded, rulerMark } from '../measure/round.ts';
import { rulerUnit } from '../measure/ruler-unit.ts';
import { readRef } from '../project/ref.ts';
import { type FoldProgress, foldedExtent, layDown, sharesOf } from '../shape/fold.ts';
import { finishedProgress } from '../shape/fold-order.ts';
import type { Net } from '../shape/net.ts';
import { foldPaper } from '../shape/paint/paper-sheet.ts';
import { USUAL_LOOK } from '../shape/paint/picture.ts';
import { type Sheet, sheetsNamed } from '../shape/sheets.ts';
import { layersOnPanels } from '../shape/view/panel-layers.ts';
import { paperOf } from '../shape/view/paper-of.ts';
import { pieceNamed } from '../words/names.ts';
import { arranged, drawFace, type SheetPicture } from './arranged.ts';
import { Canvas, type Drawing } from './canvas.ts';
import { drawOnce, makerOnce } from './draw-once.ts';
import { facesSeen, paperLook } from './seen-paper.ts';
import type { DrawingRoom, DrawingStyle } from './style.ts';
import { caption, listed, spokenVolume } from './words.ts';

/** The pose a view names; undefined for one that shows no finished shape. */
function poseOf(net: Net, view: string): FoldProgress | undefined {
  if (view === 'folded') return finishedProgress(net);
  return view === 'flat' ? 0 : undefined;
}

/**
 * A folded piece seen a little from the right and from above, layers on their panels, all in their stocks' colors. A
 * piece of several sheets (tray and lid) has them side by side; a further sheet alone is named `box.lid`. Undefined
 * when there is no such piece or view.
 * @param toCome pieces that are not yet on it
 */
export function foldedDrawing(
  editions: Editions,
  id: string,
  view: string,
  room: DrawingRoom,
  style: DrawingStyle,
  toCome: ReadonlySet<string> = new Set(),
): Drawing | undefined {
  const { shown, say } = style;
  const what = [id, view, [...toCome]];
  const piece = seeOnce(editions, { shown, say }, what, () => seePiece(editions, id, view, style, toCome));
  return drawOnce(editions, style, ['folded', ...what, room], () => drawFolded(piece, room, style));
}

/** A folded piece at full size, and what is told of it: the same in every room. */
type SeenPiece = { readonly sheets: readonly SheetPicture[]; readonly told: string };

const seeOnce = makerOnce<SeenPiece | undefined>();

function seePiece(
  editions: Editions,
  id: string,
  view: string,
  style: DrawingStyle,
  toCome: ReadonlySet<string>,
): SeenPiece | undefined {
  const edition = editions[style.shown[0]];
  const sheets = sheetsNamed(edition.shapes.nets, readRef(id)).flatMap((sheet) =>
    seenSheet(edition, id, sheet, view, toCome),
  );
  return sheets.length === 0 ? undefined : { sheets, told: describe(editions, id, view, style, toCome) };
}

function drawFolded(
  piece: SeenPiece | undefined,
  room: DrawingRoom,
  style: DrawingStyle,
): Drawing | undefined {
  if (!piece) return undefined;
  const canvas = new Canvas(style);
  for (const face of arranged(piece.sheets, room).flatMap(({ faces }) => faces)) drawFace(canvas, face);
  return canvas.drawing('folded', piece.told);
}

function seenSheet(
  edition: Edition,
  id: string,
  { net }: Sheet,
  view: string,
  toCome: ReadonlySet<string>,
): SheetPicture[] {
  const pose = poseOf(net, view);
  if (pose === undefined) return [];
  const sheet = paperOf(net, paperLook(edition, readRef(id).piece, toCome));
  const { tree } = foldPaper(sheet, sharesOf(layDown(net).hung, pose));
  return [{ faces: facesSeen(tree, USUAL_LOOK), lines: [] }];
}

function describe(
  editions: Editions,
  id: string,
  view: string,
  style: DrawingStyle,
  toCome: ReadonlySet<string>,
): string {
  const { say } = style;
  const [inch, metric] = [extentOf(editions.inch, id, view), extentOf(editions.metric, id, view)];
  const size = spokenVolume({ inch, metric }, style);
  const panels = new Set(
    sheetsNamed(editions.inch.shapes.nets, readRef(id)).flatMap(({ net }) =>
      net.panels.map((each) => each.id),
    ),
  );
  const layers = layersOnPanels(editions.inch.shapes, readRef(id).piece).filter(
    ({ panel, piece }) => panels.has(panel) && !toCome.has(piece.id.value),
  );
  const names = layers.map((layer) => pieceNamed(layer.piece.id.value, say));
  const whole = say(view === 'folded' ? 'drawing-folded' : 'drawing-flat', { name: caption(id, say), size });
  return names.length === 0 ? whole : `${whole} ${say('drawing-on-it', { layers: listed(names, say) })}`;
}

/** Width, height and depth over all, of the first sheet; of a finished one closed, though it is shown a little open. */
function extentOf(edition: Edition, id: string, view: string): readonly Length[] {
  const [sheet] = sheetsNamed(edition.shapes.nets, readRef(id));
  const pose = sheet && (view === 'folded' ? 1 : poseOf(sheet.net, view));
  if (!sheet || pose === undefined) return [];
  const unit = rulerUnit(edition.project.unit);
  const lengths = foldedExtent(sheet.net, pose).map((side) => roundFolded(side, unit));
  // Of a shape that is still open nobody measures the size over all; no depth isn't said.
  return lengths
    .map((length) => (view === 'folded' ? length : rulerMark(length, unit)))
    .filter((length, index) => index < 2 || length.mm >= 1);
}
