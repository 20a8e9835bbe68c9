import type { Edition, Editions, Twin } from '../edition/editions.ts';
import type { Net } from '../shape/net.ts';
import { keyholed } from '../shape/openings/keyhole.ts';
import { boxCorners } from '../shape/outline.ts';
import { everyNet } from '../shape/sheets.ts';
import { saidCorners } from '../words/corners.ts';
import { refNamed } from '../words/names.ts';
import { saidOutline } from '../words/outlines.ts';
import { layerTwin } from '../words/reveals.ts';
import { Canvas, type Drawing } from './canvas.ts';
import { drawDecoration, tellDecoration } from './decoration.ts';
import { dimensionSize, tailOf } from './dimension.ts';
import { drawOnce } from './draw-once.ts';
import { AT_ORIGIN, blankLines, cutLines, type DrawingFrame, placeAll, sheetBox } from './outline.ts';
import { spokenReveals } from './reveals.ts';
import { colorOf, type DrawingRoom, type DrawingStyle, type InBoth, netOf } from './style.ts';
import { caption, sizeLabels, spokenLengths, spokenSize } from './words.ts';

/**
 * One scale for all the pieces of a project, so that they can be compared: the largest at which each fits the room,
 * at most half size.
 */
export function pieceScale(edition: Edition, room: DrawingRoom): number {
  const scales = everyNet(edition.shapes.nets).flatMap(({ size }) => [
    room.width / size.width.mm,
    room.height / size.height.mm,
  ]);
  return Math.min(0.5, ...scales);
}

/**
 * A piece of the cut list to scale; undefined when its size isn't known. `dimensioned` draws its width and height
 * along it, for where they don't stand beside it anyway.
 */
export function pieceDrawing(
  editions: Editions,
  id: string,
  scale: number,
  style: DrawingStyle,
  dimensioned = true,
): Drawing | undefined {
  const draw = (): Drawing | undefined => drawPiece(editions, id, scale, style, dimensioned);
  return drawOnce(editions, style, ['piece', id, scale, dimensioned], draw);
}

function drawPiece(
  editions: Editions,
  id: string,
  scale: number,
  style: DrawingStyle,
  dimensioned: boolean,
): Drawing | undefined {
  const net = netOf(editions, style.shown[0], id);
  if (!net) return undefined;
  const frame: DrawingFrame = { scale, ...AT_ORIGIN };
  const canvas = new Canvas(style);
  drawCut(canvas, net.drawn, frame, colorOf(editions[style.shown[0]], id));
  drawDecoration(canvas, net.drawn, frame, false);
  if (dimensioned) drawSize(canvas, net, frame);
  return canvas.drawing('piece', describe(editions, id, net, style));
}

/** How far a dimension line runs from the edge it measures. */
const AWAY = 2.4;

function drawSize(canvas: Canvas, net: InBoth<Net>, frame: DrawingFrame): void {
  const box = sheetBox(net.drawn, frame);
  // Beyond the arrow that points at a short width from outside.
  const away = [AWAY, AWAY + tailOf(0, box.right)] as const;
  dimensionSize(canvas, box, sizeLabels(net, canvas.style), away);
}

/** What is cut first: the outline of a flat piece; of a net the whole sheet, with its score lines. */
function drawCut(canvas: Canvas, net: Net, frame: DrawingFrame, color: string | undefined): void {
  const sheet = boxCorners(sheetBox(net, frame));
  if (net.folds.length === 0) {
    for (const panel of net.panels) {
      const own = (net.openings ?? []).filter((opening) => opening.panel === panel.id);
      const holes = own.map(({ outline }) => placeAll(outline, frame));

      canvas.paper(keyholed(placeAll(panel.outline, frame), holes).points, color);
    }
    for (const line of cutLines(net, frame)) canvas.line('cut', line);
    return;
  }
  canvas.paper(sheet, color);
  for (const { from, to } of net.folds) canvas.line('score', placeAll([from, to], frame));
  for (const line of cutLines(net, frame)) canvas.line('blank', line);
  for (const line of blankLines(net, frame)) canvas.line('blank', line);
  canvas.line('cut', sheet, true);
}

function describe(editions: Editions, id: string, net: InBoth<Net>, style: DrawingStyle): string {
  const { say } = style;
  const parts = [caption(id, say), spokenSize({ inch: net.inch.size, metric: net.metric.size }, style)];
  const layer = layerTwin(editions, id);
  if (layer) {
    const base = refNamed(layer.inch.on, say);
    parts.push(say('drawing-on', { base, reveals: spokenReveals(layer, style) }));
  }
  const spoken = (length: Twin): string => spokenLengths([length], style);
  const outline = saidOutline(editions, id, spoken);
  const shapes = outline ? [outline] : saidCorners(editions, id, spoken);
  parts.push(...shapes.map(({ key, values }) => say(key, values)));
  const scores = net.drawn.scores.reduce((total, { at, isCut }) => total + (isCut ? 0 : at.length), 0);
  if (scores > 0) parts.push(say('drawing-scored', { count: scores }));
  return [...parts, ...tellDecoration(net.drawn, style)].join(', ');
}
