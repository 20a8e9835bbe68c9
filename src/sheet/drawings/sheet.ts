import type { FlatBox, Net, Panel } from '../../shape/net.ts';
import { nameOf } from '../names.ts';
import type { Canvas } from './canvas.ts';
import { extentOf, plain } from './lettering.ts';
import type { LineKind } from './lines.ts';
import { blankLines, cutLines, type Frame, place, placeAll, placeSegment, sheetBox } from './outline.ts';
import { boxCorners } from './region.ts';

/** Draws a net as a workshop would: paper, waste, glue areas, folds by their kind, cuts last and strongest. */
export function drawNet(canvas: Canvas, net: Net, frame: Frame, color?: string): void {
  canvas.paper(boxCorners(sheetBox(net, frame)), color);
  for (const outline of net.waste) {
    canvas.paper(placeAll(outline, frame));
    canvas.hatch(placeAll(outline, frame));
  }
  for (const panel of gluedPanels(net)) canvas.dots(placeAll(panel.outline, frame));
  drawFolds(canvas, net, frame);
  drawCuts(canvas, net, frame);
}

/** The score lines, each kind as one group of lines. */
export function drawFolds(canvas: Canvas, net: Net, frame: Frame): void {
  for (const kind of ['mountain', 'valley', 'flat'] as const) {
    const own = net.folds.filter(({ direction }) => direction === kind);
    const line: LineKind = kind;
    canvas.lines(
      line,
      own.map((fold) => placeSegment(fold, frame)),
    );
  }
}

/** The edges of the waste, thin; then everything that is cut. */
export function drawCuts(canvas: Canvas, net: Net, frame: Frame): void {
  for (const line of blankLines(net, frame)) canvas.line('blank', line);
  for (const line of cutLines(net, frame)) canvas.line('cut', line);
  for (const { centre, diameter } of net.holes ?? [])
    canvas.ring('cut', place(centre, frame), (diameter.mm * frame.scale) / 2);
}

/** The panels that are glued under or over another. */
export function gluedPanels(net: Net): readonly Panel[] {
  const glued = new Set(net.glue.map(({ from }) => from));
  return net.panels.filter(({ id, name }) => glued.has(id) || (name !== undefined && glued.has(name)));
}

/** A panel's name that found no room on it: its number there, and the name to explain it. */
export type Numbered = { readonly number: number; readonly name: string };

/**
 * Writes each panel's name on it: level, else upright, else a number, unless nothing is to be numbered.
 * @returns the numbers, for a list beside the drawing.
 */
export function drawNames(
  canvas: Canvas,
  net: Net,
  frame: Frame,
  size: number,
  numbering = true,
): readonly Numbered[] {
  const numbered: Numbered[] = [];
  const glued = gluedPanels(net);
  for (const panel of net.panels) {
    if (panel.name === undefined) continue;
    const name = nameOf(panel.name);
    const { left, top, right, bottom } = placeBox(panel.box, frame);
    const centre = { x: (left + right) / 2, y: (top + bottom) / 2 };
    const label = [plain(name)];
    const halo = glued.includes(panel);
    const extent = extentOf(label);
    const [long, high] = [extent.width * size + 1.2, extent.height * size + 1.2];
    if (long <= right - left && high <= bottom - top) canvas.label(label, centre, { size, halo });
    else if (long <= bottom - top && high <= right - left)
      canvas.label(label, centre, { size, halo, upright: true });
    else if (numbering) {
      const number = numbered.length + 1;
      const room = Math.min(right - left, bottom - top);
      canvas.label([plain(String(number))], centre, { size: Math.min(size, room), halo, strong: true });
      numbered.push({ number, name });
    }
  }
  return numbered;
}

function placeBox(box: FlatBox, frame: Frame): { left: number; top: number; right: number; bottom: number } {
  const from = place({ x: box.left, y: box.top }, frame);
  const to = place({ x: box.right, y: box.bottom }, frame);
  return { left: from.x, top: from.y, right: to.x, bottom: to.y };
}
