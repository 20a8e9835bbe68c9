import type { Drawing } from '../drawing/canvas.ts';
import { drawingElement } from '../drawing/figures.ts';
import { moveDrawing } from '../drawing/fold-move.ts';
import { foldedDrawing } from '../drawing/folded.ts';
import { pictureElement } from '../drawing/placed-picture.ts';
import { stackDrawing } from '../drawing/stack.ts';
import type { DrawingRoom } from '../drawing/style.ts';
import type { Setting } from '../handout/setting.ts';
import { piecesToCome } from '../handout/to-come.ts';
import { type Ref, writeName } from '../project/ref.ts';
import { drawnBase, viewsOf } from '../shape/view/views.ts';
import type { SafeHtml } from '../words/safe-html.ts';

/** What is lettered in a picture is hidden, and takes little room. */
const LETTERING = 0.2;

/**
 * One small picture of a step: the first that it folds or sticks, else its photo. Undefined where it has neither, or none
 * but what steps before it show.
 * @param shown the pictures of those, to which it is added
 */
export function pictureOf(
  setting: Setting,
  number: number,
  room: DrawingRoom,
  shown: Set<string>,
): SafeHtml | undefined {
  for (const picture of picturesOf(setting, number, room)) {
    const markup = String(picture);
    if (shown.has(markup)) continue;
    shown.add(markup);
    return picture;
  }
  return undefined;
}

/** Each drawn only when it is asked for. */
function* picturesOf(setting: Setting, number: number, room: DrawingRoom): Iterable<SafeHtml> {
  const small = { ...setting, drawings: { ...setting.drawings, lettering: LETTERING } };
  const { references = [], pictures = [] } = setting.project.steps[number - 1]?.prose ?? {};
  for (const { kind, of, view } of references) {
    const drawing =
      kind === 'drawing'
        ? drawingOf(small, number, room, of.value, view?.value)
        : layersUnder(small, room, of.value.piece);
    if (drawing) yield drawingElement(drawing);
  }
  for (const { path, alternative } of pictures) {
    const placed = setting.pictures.get(path.value);
    if (placed) yield pictureElement(placed, alternative);
  }
}

function drawingOf(
  { project, editions, measures, drawings }: Setting,
  number: number,
  room: DrawingRoom,
  of: Ref,
  view = 'flat',
): Drawing | undefined {
  const { shapes } = editions[measures.leading];
  if (view === 'flat' || !viewsOf(shapes, of).includes(view)) return undefined;
  const base = view === 'layers' ? drawnBase(shapes, of) : undefined;
  if (base) return stackDrawing(editions, base, room, drawings);
  const id = writeName(of);
  if (view !== 'folded') return moveDrawing(editions, id, view, room, drawings);
  return foldedDrawing(editions, id, view, room, drawings, piecesToCome(project, number));
}

/** The pile that a piece lies in, where it lies on something. */
function layersUnder(
  { editions, measures, drawings }: Setting,
  room: DrawingRoom,
  piece: string,
): Drawing | undefined {
  const { shapes } = editions[measures.leading];
  const layer = shapes.layers.find((each) => each.piece.id.value === piece);
  const base = layer && drawnBase(shapes, layer.on);
  return base && stackDrawing(editions, base, room, drawings);
}
