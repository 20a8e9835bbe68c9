import type { Drawing } from '../drawing/drawing.ts';
import { drawingFigure, type Figure } from '../drawing/figures.ts';
import { foldedDrawing } from '../drawing/folded.ts';
import { pieceDrawing } from '../drawing/piece.ts';
import { stackDrawing } from '../drawing/stack.ts';
import { templateDrawing, templateReduction } from '../drawing/template.ts';
import { USUAL_VIEW, viewsOf } from '../shape/view/views.ts';
import { referenceOf } from '../words/names.ts';
import type { Setting } from './setting.ts';

/** Room beside a step's text, in millimetres of paper. */
const BESIDE = { width: 50, height: 46 };

type Attributes = Readonly<Record<string, string>>;

/** The figure of `::drawing{of=box view=folded}`; undefined where there is no such view. */
export function stepDrawing(setting: Setting, of: string, attributes: Attributes): Figure | undefined {
  const view = attributes.view ?? USUAL_VIEW;
  const { editions, measures } = setting;
  if (!viewsOf(editions[measures.leading].shapes, of).includes(view)) return undefined;
  const drawing = drawingFor(setting, of, view);
  return drawing && drawingFigure(drawing, attributes.caption);
}

function drawingFor(setting: Setting, of: string, view: string): Drawing | undefined {
  if (view === 'layers') return stackDrawing(setting.editions, referenceOf(of), BESIDE, setting.drawings);
  if (view === 'flat') return flatDrawing(setting, of);
  return foldedDrawing(setting.editions, of, view, BESIDE, setting.drawings);
}

/** A scored sheet with its dimensions, or a flat piece. */
function flatDrawing({ editions, measures, drawings }: Setting, of: string): Drawing | undefined {
  const net = editions[measures.leading].shapes.nets.get(of);
  if (!net) return undefined;
  const { width, height } = net.size;
  if (net.folds.length > 0) {
    return templateDrawing(editions, of, templateReduction(net, BESIDE), drawings, true);
  }
  const scale = Math.min(0.5, BESIDE.width / width.mm, BESIDE.height / height.mm);
  return pieceDrawing(editions, of, scale, drawings);
}
