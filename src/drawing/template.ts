import type { Editions } from '../edition/editions.ts';
import type { Edge } from '../project/net-as-written.ts';
import type { Net } from '../shape/net.ts';
import { Canvas, type Drawing } from './canvas.ts';
import { drawCellNames } from './cell-names.ts';
import { type DimensionRow, dimensionSize, runningDimension } from './dimension.ts';
import { drawOnce } from './draw-once.ts';
import { drawnNetOf } from './drawn-net.ts';
import { plain } from './lettering.ts';
import { drawLines, numberedNames, tellNet } from './net-telling.ts';
import { AT_ORIGIN, type DrawingFrame, sheetBox } from './outline.ts';
import { drawNames } from './panel-names.ts';
import type { DrawnBox } from './region.ts';
import { TWO_THIRDS } from './scales.ts';
import { drawFacing, drawNet } from './sheet.ts';
import { colorOf, type DrawingRoom, type DrawingStyle, type InBoth, scoreRows } from './style.ts';
import { describeNet } from './tell-net.ts';
import { lengthLabel, sizeLabels } from './words.ts';

/** The least reduction, as the second number of "1:2" or two thirds, at which the net alone fits the room, in millimeters of paper. */
export function templateReduction(net: Net, room: DrawingRoom): number {
  const { width, height } = net.size;
  const least = Math.max(width.mm / room.width, height.mm / room.height) - 1e-9;
  return least > 1 && least <= TWO_THIRDS ? TWO_THIRDS : Math.max(1, Math.ceil(least));
}

/**
 * The dimensioned net, reduced: columns and rows as the project's file names them, score positions
 * from the edges they are said from at the board, the overall size, panel names, and the key. `id` is a piece, or a
 * further sheet of it (`box.lid`). The key stands at the side of a net that leaves room for it within `widest`
 * millimeters, else under it.
 */
export function templateDrawing(
  editions: Editions,
  id: string,
  reduction: number,
  style: DrawingStyle,
  widest?: number,
): Drawing | undefined {
  return drawOnce(editions, style, ['template', id, reduction, widest], () =>
    drawTemplate(editions, id, reduction, style, widest),
  );
}

function drawTemplate(
  editions: Editions,
  id: string,
  reduction: number,
  style: DrawingStyle,
  widest: number | undefined,
): Drawing | undefined {
  const net = drawnNetOf(editions, style.shown[0], id);
  if (!net) return undefined;
  const canvas = new Canvas(style);
  const frame: DrawingFrame = { scale: 1 / reduction, ...AT_ORIGIN };
  drawNet(canvas, net, frame, colorOf(editions[style.shown[0]], id));
  const numbered = drawNames(canvas, net, frame, { numbering: true });
  drawCellNames(canvas, net, frame);
  const box = sheetBox(net.drawn, frame);
  drawScores(canvas, net, box, 1 / reduction);
  dimensionSize(canvas, box, sizeLabels(net, style), [3.5, 3.5]);
  drawFacing(canvas, { x: (box.left + box.right) / 2, y: canvas.ink.top - 1.5 });
  tellNet(canvas, net, numbered, { reduction, widest });
  return canvas.drawing('template', describeNet(id, net, reduction, style));
}

/**
 * The net as it lies on the table, for a step: what is cut away, folds, glue and names, without dimensions and key,
 * which the whole template has. As large as the room, at most full size.
 */
export function flatNetDrawing(
  editions: Editions,
  id: string,
  room: DrawingRoom,
  style: DrawingStyle,
): Drawing | undefined {
  return drawOnce(editions, style, ['flat', id, room], () => drawFlatNet(editions, id, room, style));
}

function drawFlatNet(
  editions: Editions,
  id: string,
  room: DrawingRoom,
  style: DrawingStyle,
): Drawing | undefined {
  const net = drawnNetOf(editions, style.shown[0], id);
  if (!net) return undefined;
  const canvas = new Canvas(style);
  const { width, height } = net.drawn.size;
  const scale = Math.min(1, room.width / width.mm, room.height / height.mm);
  const frame: DrawingFrame = { scale, ...AT_ORIGIN };
  drawNet(canvas, net, frame, colorOf(editions[style.shown[0]], id));
  const numbered = drawNames(canvas, net, frame, { numbering: true });
  drawCellNames(canvas, net, frame);
  const { left, right } = sheetBox(net.drawn, frame);
  drawFacing(canvas, { x: (left + right) / 2, y: canvas.ink.top - 1.5 });
  const under = { x: canvas.ink.left, y: canvas.ink.bottom };
  drawLines(canvas, numberedNames(numbered, right - left, canvas.lettering), under);
  return canvas.drawing('template', describeNet(id, net, undefined, style));
}

const ROW_AWAY = 6;

/** Positions said from the top or bottom stand left of the sheet, those from the left or right above it. */
const ROWS: readonly (readonly [
  axis: DimensionRow['axis'],
  beside: 'left' | 'top',
  from: readonly Edge[],
])[] = [
  ['upright', 'left', ['top', 'bottom']],
  ['across', 'top', ['left', 'right']],
];

function drawScores(canvas: Canvas, net: InBoth<Net>, box: DrawnBox, scale: number): void {
  const { style } = canvas;
  const rows = scoreRows(net);
  for (const [axis, side, edges] of ROWS) {
    for (const { from, at } of rows.filter((scores) => edges.includes(scores.from))) {
      const row = { axis, edge: box[side], row: Math.min(canvas.ink[side], box[side]) - ROW_AWAY };
      const origin = box[from];
      const way = from === 'left' || from === 'top' ? 1 : -1;
      const marks = at.map((position) => ({
        at: origin + way * position[style.shown[0]].mm * scale,
        label: lengthLabel(position, style, true),
      }));
      const labels = runningDimension(canvas, row, origin, marks);
      captionRow(canvas, from, row, { origin, labels });
    }
  }
}

/** `from left` beside the ring where the positions start. */
function captionRow(
  canvas: Canvas,
  from: Edge,
  { axis, row }: DimensionRow,
  { origin, labels }: { readonly origin: number; readonly labels: readonly [number, number] },
): void {
  const size = canvas.lettering * 0.85;
  const words = canvas.style.say(`drawing-from-${from}`);
  if (axis === 'across') {
    const before = from === 'left';
    const at = { x: origin + (before ? -1.4 : 1.4), y: row };
    canvas.label([plain(words)], at, { size, anchor: before ? 'end' : 'start' });
  } else {
    const under = from === 'bottom';
    const y = under ? Math.max(origin + 1.6, labels[1] + 1) : Math.min(origin - 1.6, labels[0] - 1);
    const at = { x: row + 1.2, y };
    // Word under word, or the drawing would be wider by it.
    canvas.label(words.split(' ').map(plain), at, { size, anchor: 'end', sits: under ? 'under' : 'over' });
  }
}
