import type { Net } from '../shape/net.ts';
import { boxCorners } from '../shape/outline.ts';
import { gluedPanels } from '../shape/panel-tree.ts';
import type { Canvas } from './canvas.ts';
import { drawDecoration } from './decoration.ts';
import { blankLines, cutLines, type DrawingFrame, placeAll, placeSegment, sheetBox } from './outline.ts';
import { runningOn } from './region.ts';

/** Draws a net as a workshop would: paper, waste, glue areas, folds by their kind, cuts last and strongest. */
export function drawNet(canvas: Canvas, net: Net, frame: DrawingFrame, color?: string): void {
  canvas.paper(boxCorners(sheetBox(net, frame)), color);
  for (const outline of net.waste) {
    canvas.paper(placeAll(outline, frame));
    canvas.hatch(placeAll(outline, frame));
  }
  for (const panel of gluedPanels(net)) canvas.dots(placeAll(panel.outline, frame));
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
