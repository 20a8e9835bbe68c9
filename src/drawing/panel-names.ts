import { distanceOutside, type Point2 } from '../shape/flat-polygon.ts';
import type { FlatBox, Net } from '../shape/net.ts';
import { boxCorners } from '../shape/outline.ts';
import type { Say } from '../words/labels.ts';
import { partNamed } from '../words/names.ts';
import type { Canvas } from './canvas.ts';
import { extentOf, plain } from './lettering.ts';
import { type DrawingFrame, place, placeAll, sheetBox } from './outline.ts';
import type { DrawnBox } from './region.ts';
import type { DrawnNet } from './style.ts';
import { roomiestSpot } from './visible.ts';

/** A panel's name that found no room on it: its number there, and the name to explain it. */
export type Numbered = { readonly number: number; readonly name: string };

type NameSetting = {
  /** Whether a number stands for a name that finds no room; else it is left out. */
  readonly numbering: boolean;
  /** The part of the drawing to keep to; the whole sheet when absent. */
  readonly within?: DrawnBox;
};

/**
 * Writes each panel's name on it: level, else upright, else a number.
 * @returns the numbers, for a list beside the drawing.
 */
export function drawNames(
  canvas: Canvas,
  { drawn: net, glued }: DrawnNet,
  frame: DrawingFrame,
  { numbering, within = sheetBox(net, frame) }: NameSetting,
): readonly Numbered[] {
  const numbered: Numbered[] = [];
  const size = canvas.lettering;
  for (const panel of net.panels) {
    if (panel.name === undefined) continue;
    const name = nameIn(net, panel.name, canvas.style.say);
    const [width, height, middle] = roomOn(panel.box, frame, within);
    const label = [plain(name)];
    const holes = (net.openings ?? []).filter((opening) => opening.panel === panel.id);
    const halo = holes.length > 0 || glued.some(({ panel: id }) => id === panel.id);
    const extent = extentOf(label);
    const [long, high] = [extent.width * size + 1.2, extent.height * size + 1.2];
    const outline = panel.outline.map((point) => place(point, frame));
    const cut = holes.map((hole) => placeAll(hole.outline, frame));
    const center = (cut.length > 0 && roomiestSpot(outline, cut, [])?.at) || middle;
    const fits = (across: number, down: number): boolean =>
      across <= width && down <= height && liesOn(outline, center, across - 1.2, down - 1.2);
    if (fits(long, high)) canvas.label(label, center, { halo });
    else if (fits(high, long)) canvas.label(label, center, { halo, upright: true });
    else if (numbering) {
      const number = numbered.length + 1;
      const setting = { size: Math.min(size, width, height), halo, strong: true };
      canvas.label([plain(String(number))], center, setting);
      numbered.push({ number, name });
    }
  }
  return numbered;
}

/** Whether all of a name lies on a panel, which may be no rectangle. */
function liesOn(outline: readonly Point2[], { x, y }: Point2, width: number, height: number): boolean {
  const [across, down] = [width / 2, height / 2];
  const corners = boxCorners({ left: x - across, right: x + across, top: y - down, bottom: y + down });
  return corners.every((corner) => distanceOutside(corner, outline) < 0.5);
}

/** A panel's name; that of a flat piece is the piece's own. */
function nameIn({ folds }: Net, name: string, say: Say): string {
  return (folds.length === 0 ? say.pieces.get(name) : undefined) ?? partNamed(name, say);
}

/** Width, height and middle of what is seen of a panel; neither where it isn't seen. */
function roomOn(box: FlatBox, frame: DrawingFrame, within: DrawnBox): readonly [number, number, Point2] {
  const from = place({ x: box.left, y: box.top }, frame);
  const to = place({ x: box.right, y: box.bottom }, frame);
  const left = Math.max(from.x, within.left);
  const top = Math.max(from.y, within.top);
  const right = Math.min(to.x, within.right);
  const bottom = Math.min(to.y, within.bottom);
  return [right - left, bottom - top, { x: (left + right) / 2, y: (top + bottom) / 2 }];
}
