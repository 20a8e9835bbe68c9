import type { Point2 } from '../shape/flat-polygon.ts';
import type { Net } from '../shape/net.ts';
import { boxCorners } from '../shape/outline.ts';
import type { Canvas } from './canvas.ts';
import { drawDecoration } from './decoration.ts';
import { plain } from './lettering.ts';
import { blankLines, cutLines, type DrawingFrame, placeAll, placeSegment, sheetBox } from './outline.ts';
import { runningOn } from './region.ts';
import type { DrawnNet } from './style.ts';

/** Draws a net as a workshop would: paper, waste, glue areas, folds by their kind, cuts last and strongest. */
export function drawNet(canvas: Canvas, drawn: DrawnNet, frame: DrawingFrame, color?: string): void {
  const net = drawn.drawn;
  canvas.paper(boxCorners(sheetBox(net, frame)), color);
  for (const outline of net.waste) {
    canvas.paper(placeAll(outline, frame));
    canvas.hatch(placeAll(outline, frame));
  }
  drawGlue(canvas, drawn, frame);
  for (const { outline, how } of net.openings ?? []) {
    if (how !== 'slit') canvas.paper(placeAll(outline, frame));
    if (how === 'cut') canvas.hatch(placeAll(outline, frame));
  }
  drawFolds(canvas, net, frame);
  // The edges of the waste, thin.
  for (const line of blankLines(net, frame)) canvas.line('blank', line);
  drawCuts(canvas, net, frame);
  drawDecoration(canvas, net, frame);
}

/** Which side of the paper is drawn and which of its edges is the top, over a point above everything else. */
export function drawFacing(canvas: Canvas, at: Point2): void {
  canvas.label([plain(canvas.style.say('drawing-facing'))], at, { sits: 'over' });
}

/** The areas that take glue: dots where it goes on the side that is drawn, crosses where it goes on the far side. */
export function drawGlue(canvas: Canvas, { glued }: DrawnNet, frame: DrawingFrame): void {
  for (const { face, areas } of glued) {
    for (const area of areas) canvas.glue(face, placeAll(area, frame));
  }
}

/** The score lines, each kind as one group of lines. */
export function drawFolds(canvas: Canvas, net: Net, frame: DrawingFrame): void {
  for (const kind of ['mountain', 'valley', 'flat'] as const) {
    const own = net.folds.filter(({ direction }) => direction === kind);
    canvas.lines(kind, runningOn(own.map((fold) => placeSegment(fold, frame))));
  }
}

/** Everything that is cut or punched. */
export function drawCuts(canvas: Canvas, net: Net, frame: DrawingFrame): void {
  for (const line of cutLines(net, frame)) canvas.line('cut', line);
}
