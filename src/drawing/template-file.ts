import type { Editions } from '../edition/editions.ts';
import { boxCorners } from '../shape/outline.ts';
import { xmlDocument } from '../words/safe-html.ts';
import { Canvas } from './canvas.ts';
import { drawDecoration } from './decoration.ts';
import { drawnNetOf } from './drawn-net.ts';
import { type DrawingFrame, sheetBox } from './outline.ts';
import { drawNames } from './panel-names.ts';
import { boxOf } from './region.ts';
import { drawCuts, drawFacing, drawFolds, drawGlue } from './sheet.ts';
import type { DrawingStyle } from './style.ts';
import { describeNet } from './tell-net.ts';

/** White round the sheet, so that no line is cut in half at the edge of the file. */
const BORDER = 5;

/**
 * A stand-alone `.svg` of a piece (or a further sheet of it, `box.lid`) at 1:1, a unit a millimeter, the cut sheet's
 * top left corner at 0,0: what is cut, what is scored, what is punched and stamped, where glue goes, and the panels' names, each a group of its own. Undefined when
 * the piece has no net.
 */
export function templateSvg(editions: Editions, id: string, style: DrawingStyle): string | undefined {
  const net = drawnNetOf(editions, style.shown[0], id);
  if (!net) return undefined;
  const frame: DrawingFrame = { scale: 1, left: 0, top: 0 };
  const [cuts, scores, names] = [new Canvas(style), new Canvas(style), new Canvas(style)];
  drawCuts(cuts, net.drawn, frame);
  drawFolds(scores, net.drawn, frame);
  drawNames(names, net, frame, { numbering: false });
  const [marks, glue] = [new Canvas(style), new Canvas(style)];
  drawDecoration(marks, net.drawn, frame);
  drawGlue(glue, net, frame);
  const canvas = new Canvas(style);
  canvas.group('cuts', cuts);
  canvas.group('scores', scores);
  canvas.group('marks', marks);
  canvas.group('glue', glue);
  const { left, top, right, bottom } = sheetBox(net.drawn, frame);
  drawFacing(names, { x: (left + right) / 2, y: top - 1.5 });
  canvas.group('names', names);
  const border = { left: left - BORDER, top: top - BORDER, right: right + BORDER, bottom: bottom + BORDER };
  const page = boxOf([border, names.ink].flatMap(boxCorners));
  const words = describeNet(id, net, 1, style);
  const { svg } = canvas.drawing('file', words, page, { color: '#000', 'font-family': 'sans-serif' });
  return xmlDocument(svg);
}
