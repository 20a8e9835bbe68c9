import { isUpright } from '../project/net-as-written.ts';
import type { Point2 } from '../shape/flat-polygon.ts';
import type { EdgeRow, Net, Panel } from '../shape/net.ts';
import type { Canvas } from './canvas.ts';
import { extentOf, plain } from './lettering.ts';
import { type DrawingFrame, placeAll } from './outline.ts';
import { boxOf } from './region.ts';
import type { DrawingStyle } from './style.ts';
import { listed } from './words.ts';

/** What is punched and stamped on a sheet or a panel, in millimeters from its left and top. */
type Decoration = {
  readonly motifs: readonly (readonly Point2[])[];
  readonly images: readonly { readonly outline: readonly Point2[]; readonly stamp: string }[];
};

/** Points of a motif's outline, a half round: what the tool really cuts is its own. */
const STRETCHES = 8;

/** The decoration of a whole sheet, or that of a panel of it. */
export function decorationOf({ rows = [], impressions = [] }: Net, panel?: Panel): Decoration {
  const isThere = (each: { readonly panel?: Panel }): boolean => !panel || each.panel?.id === panel.id;
  const { left, top } = panel?.box ?? { left: undefined, top: undefined };
  const frame = { scale: 1, left: -(left?.mm ?? 0), top: -(top?.mm ?? 0) };
  const shift = ({ x, y }: Point2): Point2 => ({ x: x + frame.left, y: y + frame.top });
  return {
    motifs: rows
      .filter(isThere)
      .flatMap((row) => Array.from({ length: row.count }, (_, index) => motifOf(row, index).map(shift))),
    images: impressions
      .filter(isThere)
      .map(({ corners, stamp }) => ({ outline: placeAll(corners, frame), stamp })),
  };
}

function motifOf(
  { side, box, length, start, pitch, hole, depth }: EdgeRow,
  index: number,
): readonly Point2[] {
  const middle = start.mm + pitch.mm * index + hole.mm / 2;
  return Array.from({ length: STRETCHES + 1 }, (_, step) => {
    const angle = (step * Math.PI) / STRETCHES;
    const along = Math.min(Math.max(middle - (Math.cos(angle) * hole.mm) / 2, 0), length.mm);
    const inward = Math.sin(angle) * depth.mm * (side === 'right' || side === 'bottom' ? -1 : 1);
    return isUpright(side)
      ? { x: box[side].mm + inward, y: box.top.mm + along }
      : { x: box.left.mm + along, y: box[side].mm + inward };
  });
}

/** Draws the decoration of a sheet at its place; its images with their names, unless it is too small for words. */
export function drawDecoration(canvas: Canvas, net: Net, frame: DrawingFrame, naming = true): void {
  const { scale, left, top } = frame;
  const put = ({ x, y }: Point2): Point2 => ({ x: left + x * scale, y: top + y * scale });
  paintDecoration(canvas, decorationOf(net), put, naming);
}

/** Draws a decoration, each of its points where `put` puts it. */
export function paintDecoration(
  canvas: Canvas,
  { motifs, images }: Decoration,
  put: (point: Point2) => Point2,
  naming = true,
): void {
  canvas.lines(
    'motif',
    motifs.map((motif) => motif.map(put)),
  );
  for (const { outline, stamp } of images) {
    canvas.line('image', outline.map(put), true);
    if (naming) nameImage(canvas, outline.map(put), stamp);
  }
}

/** The name of an image along its upper edge, else upright in its middle, if there is room. */
function nameImage(canvas: Canvas, outline: readonly Point2[], stamp: string): void {
  const size = canvas.lettering * 0.8;
  const { left, top, right, bottom } = boxOf(outline);
  const label = [plain(stamp)];
  const extent = extentOf(label);
  const [long, high] = [extent.width * size + 1, extent.height * size + 1.4];
  const x = (left + right) / 2;
  if (long <= right - left && high <= bottom - top)
    canvas.label(label, { x, y: top + 0.8 }, { size, sits: 'under' });
  else if (long <= bottom - top && high <= right - left)
    canvas.label(label, { x, y: (top + bottom) / 2 }, { size, upright: true });
}

/** What is punched and stamped on a sheet, for who cannot see it; where and how many stands in the cut list. */
export function tellDecoration(
  { rows = [], impressions = [] }: Net,
  { say }: DrawingStyle,
): readonly string[] {
  const edges = [...new Set(rows.map(({ side }) => say(`edge-${side}`)))];
  const images = impressions.map(({ stamp }) => stamp);
  return [
    ...(edges.length > 0 ? [say('drawing-tells-punched', { edges: listed(edges, say) })] : []),
    ...(images.length > 0 ? [say('drawing-tells-stamped', { images: listed(images, say) })] : []),
  ];
}
