import { Canvas, type Drawing } from '../drawing/canvas.ts';
import { dimension } from '../drawing/dimension.ts';
import {
  extentOf,
  figureLettering,
  type Label,
  type LabelLine,
  lengthLettering,
  plain,
} from '../drawing/lettering.ts';
import type { DrawnBox } from '../drawing/region.ts';
import { listed } from '../drawing/words.ts';
import type { SheetLayout, StockPlan } from '../kit/plan.ts';
import { offcutsIn, type PaperBox, type PlacedPiece, piecesIn } from '../kit/sheet-tree.ts';
import type { CuttingStep } from '../kit/steps.ts';
import type { Length } from '../measure/length.ts';
import type { Size } from '../measure/size.ts';
import { columnName } from '../shape/cells.ts';
import type { Point2 } from '../shape/flat-polygon.ts';
import { boxCorners } from '../shape/outline.ts';
import { placeNumbers } from './cut-numbers.ts';
import { kindName, kindsCut } from './kinds.ts';
import type { KitWords } from './words.ts';

/** Room for the drawing of a sheet, in millimeters of paper: three of them under one another make a page. */
const ROOM = { width: 66, height: 62 };
const LETTERING = 2.9;

/** A sheet as it is cut: pieces on the stock's paper, waste hatched, the first cuts of each step with its number. */
export function layoutDrawing(plan: StockPlan, layout: SheetLayout, words: KitWords): Drawing {
  const { tree } = layout;
  const scale = Math.min(ROOM.width / tree.width.mm, ROOM.height / tree.height.mm);
  const { leading, voice } = words;
  const canvas = new Canvas({ shown: [leading], say: voice.say, lettering: LETTERING });
  const sheet = frameOf(tree, scale);
  canvas.paper(boxCorners(sheet));
  canvas.hatch(boxCorners(sheet));
  const labels = [
    ...offcutsIn(tree).map((box) => drawOffcut(canvas, box, scale, words)),
    ...piecesIn(tree).flatMap((piece) => drawPiece(canvas, plan, piece, scale, words)),
  ];
  drawCuts(canvas, layout, scale, labels);
  canvas.line('cut', boxCorners(sheet), true);
  drawSize(canvas, sheet, tree, words);
  return canvas.drawing('kit', describe(plan, layout, words));
}

function frameOf({ left, top, width, height }: PaperBox, scale: number): DrawnBox {
  const [x, y] = [left.mm * scale, top.mm * scale];
  return { left: x, top: y, right: x + width.mm * scale, bottom: y + height.mm * scale };
}

/** @returns the box of its label. */
function drawPiece(
  canvas: Canvas,
  { kinds, stock }: StockPlan,
  piece: PlacedPiece,
  scale: number,
  words: KitWords,
): readonly DrawnBox[] {
  const kind = kinds[piece.blank];
  if (!kind) return [];
  const frame = frameOf(piece, scale);
  canvas.paper(boxCorners(frame), stock.color?.value);
  canvas.line('layer', boxCorners(frame), true);
  const letter = columnName(piece.blank);
  const name = plain(`${letter} ${kindName(kind, words.voice)}`);
  const size = sizeLettering(piece, words);
  return [
    setWithin(
      canvas,
      frame,
      [
        [name, size],
        [plain(letter), size],
      ],
      [plain(letter)],
    ),
  ];
}

/** What is worth keeping is told from waste: no hatching, its size on it. @returns the box of its label. */
function drawOffcut(canvas: Canvas, box: PaperBox, scale: number, words: KitWords): DrawnBox {
  const frame = frameOf(box, scale);
  canvas.paper(boxCorners(frame));
  canvas.line('flat', boxCorners(frame), true);
  const [keep, size] = [plain(words.voice.say('kit-keep')), sizeLettering(box, words)];
  return setWithin(canvas, frame, [[keep, size], [size]], [keep]);
}

/** The fullest of the labels that there is room for, level or upright; the least one as large as can be. */
function setWithin(canvas: Canvas, frame: DrawnBox, labels: readonly Label[], least: Label): DrawnBox {
  const [width, height] = [frame.right - frame.left - 1.4, frame.bottom - frame.top - 1.4];
  const center = { x: (frame.left + frame.right) / 2, y: (frame.top + frame.bottom) / 2 };
  for (const label of [...labels, least]) {
    const extent = extentOf(label);
    const [long, high] = [extent.width * LETTERING, extent.height * LETTERING];
    const level = long <= width && high <= height;
    if (!level && !(long <= height && high <= width)) continue;
    return canvas.label(label, center, { strong: true, upright: !level });
  }
  const size = Math.min(LETTERING, Math.max(1.6, Math.min(width, height)));
  return canvas.label(least, center, { size, strong: true });
}

/** The number of each step stands on the cuts it makes in the first part it is made in. */
function drawCuts(canvas: Canvas, { steps }: SheetLayout, scale: number, labels: readonly DrawnBox[]): void {
  for (const step of steps)
    for (const part of step.cuts.flat()) canvas.line('cut', lineOf(part, step, scale));
  const cuts = steps.flatMap((step, index) =>
    (step.cuts[0] ?? []).map((part) => ({ number: index + 1, line: lineOf(part, step, scale) })),
  );
  for (const { number, at, size } of placeNumbers(cuts, labels)) canvas.badge(String(number), at, size);
}

function lineOf(part: PaperBox, { from, setting }: CuttingStep, scale: number): readonly [Point2, Point2] {
  const { left, top, right, bottom } = frameOf(part, scale);
  const at = setting.mm * scale;
  const start = from === 'left' ? { x: left + at, y: top } : { x: left, y: top + at };
  return [start, from === 'left' ? { ...start, y: bottom } : { ...start, x: right }];
}

function drawSize(canvas: Canvas, sheet: DrawnBox, size: Size, words: KitWords): void {
  const away = 3;
  const across = { axis: 'across', edge: sheet.top, row: sheet.top - away } as const;
  const upright = { axis: 'upright', edge: sheet.right, row: sheet.right + away } as const;
  const lettered = (side: Length): Label => [lengthLettering(side, words.leading, words.voice.say)];
  dimension(canvas, across, [sheet.left, sheet.right], lettered(size.width));
  dimension(canvas, upright, [sheet.top, sheet.bottom], lettered(size.height));
}

function sizeLettering({ width, height }: Size, { leading, voice }: KitWords): LabelLine {
  const [across = [], upright = []] = [width, height].map((side) =>
    figureLettering(side, leading, voice.say),
  );
  return [...across, { text: ' × ' }, ...upright];
}

function describe(plan: StockPlan, layout: SheetLayout, words: KitWords): string {
  const { voice, spokenSize } = words;
  const { say } = voice;
  const cut = kindsCut(plan, layout).map(({ kind, count }) =>
    say('kit-drawing-pieces', { count, piece: kindName(kind, voice), size: spokenSize(kind.size) }),
  );
  const [stock, size, pieces] = [plan.stock.name, spokenSize(layout.tree), listed(cut, say)];
  const keep = offcutsIn(layout.tree).map(spokenSize);
  return [
    say('kit-drawing', { stock, size, pieces }),
    ...(keep.length > 0 ? [say('kit-drawing-keep', { sizes: listed(keep, say) })] : []),
  ].join(' ');
}
