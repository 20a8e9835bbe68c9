import type { Editions } from '../edition/editions.ts';
import type { Edge } from '../project/net-as-written.ts';
import type { Net } from '../shape/net.ts';
import { Canvas, type Drawing } from './canvas.ts';
import { drawCellNames } from './cell-names.ts';
import { type DimensionRow, dimensionSize, runningDimension } from './dimension.ts';
import { drawOnce } from './draw-once.ts';
import { drawnNetOf } from './drawn-net.ts';
import { drawKey, keyEntries } from './key.ts';
import { type Label, plain, widthOf, wrapped } from './lettering.ts';
import { AT_ORIGIN, type DrawingFrame, sheetBox } from './outline.ts';
import { drawNames, type Numbered } from './panel-names.ts';
import type { DrawnBox } from './region.ts';
import { scaleWords, TWO_THIRDS } from './scales.ts';
import { drawFacing, drawNet } from './sheet.ts';
import {
  colorOf,
  type DrawingRoom,
  type DrawingStyle,
  type DrawnNet,
  type InBoth,
  scoreRows,
} from './style.ts';
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
 * further sheet of it (`box.lid`).
 */
export function templateDrawing(
  editions: Editions,
  id: string,
  reduction: number,
  style: DrawingStyle,
): Drawing | undefined {
  return drawOnce(editions, style, ['template', id, reduction], () =>
    drawTemplate(editions, id, reduction, style),
  );
}

function drawTemplate(
  editions: Editions,
  id: string,
  reduction: number,
  style: DrawingStyle,
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
  drawFoot(canvas, net, numbered, reduction);
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
  drawLines(canvas, numberedNames(numbered, right - left, canvas.lettering));
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

/** `Scale 1:2 · inches over millimeters`, the latter only for who sees both. @param room the width of a line, in heights of its letters */
function footWords(reduction: number, { say, shown }: DrawingStyle, room: number): Label {
  const scale = wrapped(scaleWords(reduction, say), room);
  const [own = [], ...more] = scale;
  if (shown.length === 1) return scale;
  const order = say(shown[0] === 'inch' ? 'drawing-inch-over-mm' : 'drawing-mm-over-inch');
  const beside = [...own, { text: ` · ${order}`, unit: 'both' as const }];
  if (more.length === 0 && widthOf(beside) <= room) return [beside];
  const below = wrapped(order, room).map((line) => line.map((run) => ({ ...run, unit: 'both' as const })));
  return [...scale, ...below];
}

/** A line under a narrow drawing, in heights of its letters. */
const LINE = 70 / 3;

/** Scale, key and the names that found no room, under the drawing. */
function drawFoot(canvas: Canvas, net: DrawnNet, numbered: readonly Numbered[], reduction: number): void {
  const size = canvas.lettering;
  const { left, right, bottom } = canvas.ink;
  const width = Math.max(right - left, LINE * size);
  drawKey(canvas, keyEntries(net), { left, top: bottom + size, width });
  const scale = footWords(reduction, canvas.style, width / size);
  drawLines(canvas, [...numberedNames(numbered, width, size), ...scale]);
}

/** A name is not torn from its number, nor apart. */
function numberedNames(numbered: readonly Numbered[], width: number, size: number): Label {
  if (numbered.length === 0) return [];
  const names = numbered.map(({ sign, name }) => `${sign} ${name}`.replaceAll(' ', '\u00a0'));
  return wrapped(names.join(', '), width / size);
}

/** Lines of text under everything else. */
function drawLines(canvas: Canvas, lines: Label): void {
  const size = canvas.lettering;
  const { left: x, bottom } = canvas.ink;
  for (const [index, line] of lines.entries()) {
    const y = bottom + size * 0.6 + Math.max(size * 1.35, 4.8) * index;
    canvas.label([line], { x, y }, { anchor: 'start', sits: 'under' });
  }
}
