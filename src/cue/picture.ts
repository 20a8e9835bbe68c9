import type { Drawing } from '../drawing/canvas.ts';
import { drawingElement } from '../drawing/figures.ts';
import { moveDrawing } from '../drawing/fold-move.ts';
import { foldedDrawing } from '../drawing/folded.ts';
import { pictureElement } from '../drawing/placed-picture.ts';
import { stackDrawing } from '../drawing/stack.ts';
import type { Setting } from '../handout/setting.ts';
import type { Step } from '../project/model.ts';
import { type Ref, writeName } from '../project/ref.ts';
import { drawnBase, viewsOf } from '../shape/view/views.ts';
import type { SafeHtml } from '../words/safe-html.ts';

/** Room for a picture beside what is said, in millimeters; what is lettered in it is hidden, and takes little of it. */
const BESIDE = { width: 24, height: 17 };
const LETTERING = 0.2;

/** One small picture of a step: the first that it folds or sticks, else its photo; undefined where it has neither. */
export function pictureOf(setting: Setting, { prose }: Step): SafeHtml | undefined {
  const small = { ...setting, drawings: { ...setting.drawings, lettering: LETTERING } };
  for (const { kind, of, view } of prose.references) {
    const drawing =
      kind === 'drawing' ? drawingOf(small, of.value, view?.value) : layersUnder(small, of.value.piece);
    if (drawing) return drawingElement(drawing);
  }
  const [photo] = prose.pictures;
  const placed = photo && setting.pictures.get(photo.path.value);
  return placed && pictureElement(placed, photo.alternative);
}

function drawingOf({ editions, measures, drawings }: Setting, of: Ref, view = 'flat'): Drawing | undefined {
  const { shapes } = editions[measures.leading];
  if (view === 'flat' || !viewsOf(shapes, of).includes(view)) return undefined;
  const base = view === 'layers' ? drawnBase(shapes, of) : undefined;
  if (base) return stackDrawing(editions, base, BESIDE, drawings);
  const draw = view === 'folded' ? foldedDrawing : moveDrawing;
  return draw(editions, writeName(of), view, BESIDE, drawings);
}

/** The pile that a piece lies in, where it lies on something. */
function layersUnder({ editions, measures, drawings }: Setting, piece: string): Drawing | undefined {
  const { shapes } = editions[measures.leading];
  const layer = shapes.layers.find((each) => each.piece.id.value === piece);
  const base = layer && drawnBase(shapes, layer.on);
  return base && stackDrawing(editions, base, BESIDE, drawings);
}
