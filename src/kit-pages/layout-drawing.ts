import { Canvas } from '../drawing/canvas.ts';
import { dimension } from '../drawing/dimension.ts';
import type { Drawing } from '../drawing/drawing.ts';
import {
  around,
  extentOf,
  inchLettering,
  type Label,
  type LabelLine,
  metricLettering,
  plain,
} from '../drawing/lettering.ts';
import { boxCorners, type DrawnBox } from '../drawing/region.ts';
import { listed } from '../drawing/words.ts';
import type { Box, Cut, Layout, Placement, StockPlan } from '../kit/plan.ts';
import type { Length } from '../measure/length.ts';
import type { Size } from '../measure/size.ts';
import { kindLetter, kindName } from './kinds.ts';
import type { KitWords } from './words.ts';

/** Room for the drawing of a sheet, in millimetres of paper. */
const ROOM = { width: 84, height: 86 };
const LETTERING = 2.9;

/** A sheet as it is cut: pieces on the stock's paper, waste hatched, the first cuts of each step with its number. */
export function layoutDrawing(plan: StockPlan, layout: Layout, words: KitWords): Drawing {
  const { size, placements } = layout;
  const scale = Math.min(ROOM.width / size.width.mm, ROOM.height / size.height.mm);
  const canvas = new Canvas();
  const sheet = frameOf({ left: size.width.times(0), top: size.height.times(0), ...size }, scale);
  canvas.paper(boxCorners(sheet));
  canvas.hatch(boxCorners(sheet));
  for (const box of layout.offcuts) drawOffcut(canvas, box, scale, words);
  for (const placement of placements) drawPiece(canvas, plan, placement, scale, words);
  drawCuts(canvas, layout, scale);
  canvas.line('cut', boxCorners(sheet), true);
  drawSize(canvas, sheet, size, words);
  return canvas.drawing('kit', describe(plan, layout, words));
}

function frameOf({ left, top, width, height }: Box, scale: number): DrawnBox {
  const [x, y] = [left.mm * scale, top.mm * scale];
  return { left: x, top: y, right: x + width.mm * scale, bottom: y + height.mm * scale };
}

function drawPiece(
  canvas: Canvas,
  { kinds, stock }: StockPlan,
  placement: Placement,
  scale: number,
  words: KitWords,
): void {
  const kind = kinds[placement.kind];
  if (!kind) return;
  const frame = frameOf(placement, scale);
  canvas.paper(boxCorners(frame), stock.color?.value);
  canvas.line('layer', boxCorners(frame), true);
  const letter = kindLetter(placement.kind);
  const name = plain(`${letter} ${kindName(kind, words.voice)}`);
  const size = sizeLettering(placement, words);
  setWithin(canvas, frame, [[name, size], [plain(letter), size], [plain(letter)]]);
}

/** What is worth keeping is told from waste: no hatching, its size on it. */
function drawOffcut(canvas: Canvas, box: Box, scale: number, words: KitWords): void {
  const frame = frameOf(box, scale);
  canvas.paper(boxCorners(frame));
  canvas.line('flat', boxCorners(frame), true);
  const [keep, size] = [plain(words.voice.say('kit-keep')), sizeLettering(box, words)];
  setWithin(canvas, frame, [[keep, size], [size], [keep]]);
}

/** The fullest of the labels that there is room for, level or upright. */
function setWithin(canvas: Canvas, frame: DrawnBox, labels: readonly Label[]): void {
  const [width, height] = [frame.right - frame.left - 1.4, frame.bottom - frame.top - 1.4];
  const centre = { x: (frame.left + frame.right) / 2, y: (frame.top + frame.bottom) / 2 };
  for (const label of labels) {
    const extent = extentOf(label);
    const [long, high] = [extent.width * LETTERING, extent.height * LETTERING];
    const level = long <= width && high <= height;
    if (!level && !(long <= height && high <= width)) continue;
    canvas.label(label, centre, { size: LETTERING, strong: true, upright: !level });
    return;
  }
  const [last] = labels.slice(-1);
  const size = Math.min(LETTERING, Math.max(1.6, Math.min(width, height)));
  if (last) canvas.label(last, centre, { size, strong: true });
}

/** The number of each step stands on the cuts it makes in the first part it is made in. */
function drawCuts(canvas: Canvas, { cuts, steps }: Layout, scale: number): void {
  for (const cut of cuts) canvas.line('cut', lineOf(cut, scale));
  for (const step of steps) {
    const own = cuts.filter((cut) => cut.step === step.number);
    for (const cut of own.slice(0, step.cutsEach)) drawNumber(canvas, cut, scale);
  }
}

function drawNumber(canvas: Canvas, cut: Cut, scale: number): void {
  const [start, end] = lineOf(cut, scale);
  if (!start || !end) return;
  const size = 2.5;
  const inset = Math.min(2.6, Math.hypot(end.x - start.x, end.y - start.y) / 2);
  const at = cut.from === 'left' ? { x: start.x, y: start.y + inset } : { x: start.x + inset, y: start.y };
  canvas.badge(String(cut.step), at, size);
}

function lineOf({ part, from, setting }: Cut, scale: number): readonly { x: number; y: number }[] {
  const { left, top, right, bottom } = frameOf(part, scale);
  const at = setting.mm * scale;
  return from === 'left'
    ? [
        { x: left + at, y: top },
        { x: left + at, y: bottom },
      ]
    : [
        { x: left, y: top + at },
        { x: right, y: top + at },
      ];
}

function drawSize(canvas: Canvas, sheet: DrawnBox, size: Size, words: KitWords): void {
  const away = 3;
  const across = { axis: 'across', edge: sheet.top, row: sheet.top - away } as const;
  const upright = { axis: 'upright', edge: sheet.right, row: sheet.right + away } as const;
  dimension(canvas, across, [sheet.left, sheet.right], [withUnit(size.width, words)], LETTERING);
  dimension(canvas, upright, [sheet.top, sheet.bottom], [withUnit(size.height, words)], LETTERING);
}

function sizeLettering({ width, height }: Size, words: KitWords): LabelLine {
  return [...figures(width, words), { text: ' × ' }, ...figures(height, words)];
}

function withUnit(length: Length, words: KitWords): LabelLine {
  const { say } = words.voice;
  return around(say(words.leading === 'inch' ? 'drawing-in' : 'drawing-mm'), figures(length, words));
}

function figures(length: Length, { leading, voice }: KitWords): LabelLine {
  return leading === 'inch' ? inchLettering(length) : metricLettering(length, voice.say);
}

function describe({ stock, kinds }: StockPlan, layout: Layout, words: KitWords): string {
  const { say } = words.voice;
  const pieces = kinds.flatMap((kind, index) => {
    const count = layout.placements.filter((placement) => placement.kind === index).length;
    const values = { count, piece: kindName(kind, words.voice), size: words.spokenSize(kind.size) };
    return count > 0 ? [say('kit-drawing-pieces', values)] : [];
  });
  const keep = layout.offcuts.map((box) => words.spokenSize(box));
  return [
    say('kit-drawing', {
      stock: stock.name,
      size: words.spokenSize(layout.size),
      pieces: listed(pieces, say),
    }),
    ...(keep.length > 0 ? [say('kit-drawing-keep', { sizes: listed(keep, say) })] : []),
  ].join(' ');
}
