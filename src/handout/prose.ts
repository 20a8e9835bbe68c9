import type { Drawing } from '../drawing/drawing.ts';
import { drawingFigure, type Figure, pictureFigure } from '../drawing/figures.ts';
import { foldedDrawing } from '../drawing/folded.ts';
import { pieceDrawing } from '../drawing/piece.ts';
import { stackDrawing } from '../drawing/stack.ts';
import { templateDrawing, templateReduction } from '../drawing/template.ts';
import { USUAL_VIEW, viewsOf } from '../shape/view/views.ts';
import { referenceOf } from '../words/names.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import { renderMarkdown } from './markdown.ts';
import type { ProseSetting } from './markdown-handlers.ts';
import { measuredText, shownText } from './measured-text.ts';
import { referrer } from './references.ts';
import type { Setting } from './setting.ts';

/** How the Markdown of one step, or of the introduction, is set. Made anew for each: it remembers what was mentioned. */
export function proseSetting(setting: Setting, headings: ProseSetting['headings'] = 4): ProseSetting {
  const { project, voice, editions, measures, pictures } = setting;
  return {
    voice,
    source: project.file.text,
    headings,
    refer: referrer(editions, measures, voice),
    measured: (text) => measuredText(text, setting),
    draw: (of, view = USUAL_VIEW, caption) => stepDrawing(setting, of, view, caption),
    picture: (path, alternative, caption) => {
      const picture = pictures.get(path);
      return picture && pictureFigure(picture, shownText(alternative, setting), caption);
    },
  };
}

/** What stands before the first step: at the head of a page, and in print before the steps, where there is room. */
export function introductionOf(setting: Setting): SafeHtml | undefined {
  const { nodes } = setting.project.introduction;
  return nodes.length === 0 ? undefined : renderMarkdown(nodes, proseSetting(setting, 2));
}

/** Room beside a step's text, in millimetres of paper. */
const BESIDE = { width: 50, height: 46 };

/** The figure of `::drawing{of=box view=folded}`; undefined where there is no such view. */
function stepDrawing(setting: Setting, of: string, view: string, caption?: string): Figure | undefined {
  const { editions, measures } = setting;
  if (!viewsOf(editions[measures.leading].shapes, of).includes(view)) return undefined;
  const drawing = drawingFor(setting, of, view);
  return drawing && drawingFigure(drawing, caption);
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
