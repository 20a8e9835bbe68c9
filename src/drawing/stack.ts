import type { Editions } from '../edition/editions.ts';
import type { Ref } from '../project/ref.ts';
import { columnName } from '../shape/cells.ts';
import type { Point2 } from '../shape/flat-polygon.ts';
import { keyholed } from '../shape/openings/keyhole.ts';
import { magnitudeOf } from '../words/reveals.ts';
import { type Callout, setCallouts } from './callouts.ts';
import { Canvas, type Drawing } from './canvas.ts';
import { paintDecoration } from './decoration.ts';
import { drawOnce } from './draw-once.ts';
import { type Label, plain } from './lettering.ts';
import { type Pile, type PiledSheet, pileOn } from './pile.ts';
import { type Decorations, decorationsIn, stampsIn } from './pile-decorations.ts';
import { boxOf, type Segment } from './region.ts';
import { gapsOf, type RevealGap } from './reveals.ts';
import { scaleWords } from './scales.ts';
import { describeStack, drawLegend, namesOn } from './stack-words.ts';
import { colorOf, type DrawingRoom, type DrawingStyle } from './style.ts';
import { type LabelSpot, roomiestSpot } from './visible.ts';
import { lengthLabel } from './words.ts';

/**
 * A base with every layer on it in place, at actual size or the least whole reduction at which it fits the room, labels
 * included: what shows round each is dimensioned, each is lettered and named under the drawing, also as it is called on
 * bases that are `alike`. Undefined when the base isn't known or bears nothing.
 */
export function stackDrawing(
  editions: Editions,
  base: Ref,
  room: DrawingRoom,
  style: DrawingStyle,
  alike: readonly Ref[] = [base],
): Drawing | undefined {
  const draw = (): Drawing | undefined => drawStack(editions, base, room, style, alike);
  return drawOnce(editions, style, ['stack', base, room, alike], draw);
}

function drawStack(
  editions: Editions,
  base: Ref,
  room: DrawingRoom,
  style: DrawingStyle,
  alike: readonly Ref[],
): Drawing | undefined {
  const pile = pileOn(editions, base, style.shown[0]);
  if (!pile || pile.placed.length === 0) return undefined;
  const decorations = decorationsIn(pile, editions, style);
  const { canvas, reduction, taken } = drawnToFit(pile, decorations, editions, room, style);
  const words = { alike, names: namesOn(editions, alike, style), stamped: stampsIn(decorations, style) };
  const foot = drawLegend(canvas, editions, pile, words, taken);
  canvas.label([plain(scaleWords(reduction, style.say))], foot, { anchor: 'start', sits: 'under' });
  return canvas.drawing('stack', describeStack(pile, words, style));
}

/** No drawing is reduced more than this, so narrow is no room. */
const MOST_REDUCED = 10;

function drawnToFit(
  pile: Pile,
  decorations: Decorations,
  editions: Editions,
  room: DrawingRoom,
  style: DrawingStyle,
): { readonly canvas: Canvas; readonly reduction: number; readonly taken: DrawingRoom } {
  const { left, top, right, bottom } = boxOf(sheetsIn(pile).flatMap(({ outline }) => outline));
  const least = Math.max((right - left) / room.width, (bottom - top) / room.height);
  const largest = Math.max(1, Math.ceil(least - 1e-9));
  for (let reduction = largest; ; reduction++) {
    // Labels that would halve the drawing take more of the page.
    if (room.widest !== undefined && reduction >= 2 * largest) {
      const { widest: width, ...taken } = room;
      return drawnToFit(pile, decorations, editions, { ...taken, width }, style);
    }
    const canvas = new Canvas(style);
    drawPile(canvas, pile, decorations, editions, 1 / reduction);
    const { ink } = canvas;
    if (ink.right - ink.left <= room.width || reduction >= MOST_REDUCED)
      return { canvas, reduction, taken: room };
  }
}

function sheetsIn({ sheet, placed }: Pile): readonly PiledSheet[] {
  return [sheet, ...placed.map((each) => each.sheet)];
}

function drawPile(
  canvas: Canvas,
  pile: Pile,
  decorations: Decorations,
  editions: Editions,
  scale: number,
): void {
  const put = ({ x, y }: Point2): Point2 => ({ x: x * scale, y: y * scale });
  const drawn = sheetsIn(pile).map((sheet) => scaledSheet(sheet, (points) => points.map(put)));
  drawSheets(canvas, editions, drawn, (index) => {
    const [decoration, pose] = decorations[index] ?? [];
    if (decoration && pose) paintDecoration(canvas, decoration, (point) => put(pose(point)), false);
  });
  // What is stuck behind an opening covers it: its edge shows through, as it will be seen.
  if (pile.base.face === 'behind')
    for (const hole of drawn[0]?.openings ?? []) canvas.line('flat', hole, true);
  const gaps = gapsOf(pile.placed, scale, canvas.lettering * 2.6);
  const images = decorations.flatMap(([{ images: all }, pose]) =>
    all.map(({ outline }) => outline.map((point) => put(pose(point)))),
  );
  const callouts = [...drawReveals(canvas, gaps), ...drawLetters(canvas, drawn.slice(1), gaps, images)];
  setCallouts(canvas, boxOf(drawn.flatMap(({ outline }) => outline)), callouts);
}

function scaledSheet(
  { piece, outline, openings, behind }: PiledSheet,
  scaled: (points: readonly Point2[]) => Point2[],
): PiledSheet & { readonly outline: Point2[] } {
  return {
    piece,
    outline: scaled(outline),
    openings: openings.map(scaled),
    behind: behind.map((each) => ({ ...each, outline: scaled(each.outline) })),
  };
}

/** Paper on paper. */
function drawSheets(
  canvas: Canvas,
  editions: Editions,
  sheets: readonly PiledSheet[],
  decorate: (index: number) => void,
): void {
  const edition = editions[canvas.style.shown[0]];
  for (const [index, { piece, outline, openings, behind }] of sheets.entries()) {
    // Through an opening shows what is behind it.
    for (const each of behind) {
      canvas.paper(each.outline, colorOf(edition, each.piece));
      canvas.line('layer', each.outline, true);
    }
    canvas.paper(keyholed(outline, openings).points, colorOf(edition, piece));
    const kind = index === 0 ? 'cut' : 'layer';
    canvas.line(kind, outline, true);
    for (const hole of openings) canvas.line(kind, hole, true);
    decorate(index);
  }
}

function drawReveals(canvas: Canvas, gaps: readonly RevealGap[]): Callout[] {
  return gaps.map((gap) => {
    drawGap(canvas, gap);
    const figures: Label = lengthLabel(magnitudeOf(gap.length), canvas.style);
    const label = gap.says ? [...figures, plain(canvas.style.say(`drawing-key-${gap.says}`))] : figures;
    return { from: gap.outer, side: gap.side, label };
  });
}

/** Arrows from both sides on what shows, as narrow gaps are dimensioned. */
function drawGap(canvas: Canvas, { inner, outer }: RevealGap): void {
  const width = Math.hypot(inner.x - outer.x, inner.y - outer.y);
  const degrees = (Math.atan2(inner.y - outer.y, inner.x - outer.x) * 180) / Math.PI;
  const narrow = width < 4.5;
  canvas.line('dimension', [outer, narrow ? beyond(outer, inner, 2.2) : inner]);
  canvas.arrow(outer, narrow ? degrees : degrees + 180, 1.5);
  canvas.arrow(inner, narrow ? degrees + 180 : degrees, 1.5);
}

function beyond(from: Point2, to: Point2, distance: number): Point2 {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  return { x: to.x + ((to.x - from.x) * distance) / length, y: to.y + ((to.y - from.y) * distance) / length };
}

/**
 * The letter of each layer on it where it is seen, off the images and the dimension lines if there is room, or led out to the right
 * where too little of it shows.
 */
function drawLetters(
  canvas: Canvas,
  layers: readonly PiledSheet[],
  gaps: readonly RevealGap[],
  images: readonly (readonly Point2[])[],
): Callout[] {
  const callouts: Callout[] = [];
  const lines = gaps.map(({ outer, inner }): Segment => [outer, inner]);
  const room = canvas.lettering * 0.85;
  for (const [index, { outline, openings }] of layers.entries()) {
    // Through its own openings one looks at what lies under it.
    const covers = [...layers.slice(index + 1).map((each) => each.outline), ...openings];
    let spot: LabelSpot | undefined;
    for (const [over, beside] of [
      [[...covers, ...images], lines],
      [covers, lines],
      [covers, []],
    ] as const) {
      spot = roomiestSpot(outline, over, beside) ?? spot;
      if (spot && spot.clearance >= room) break;
    }
    if (!spot) continue;
    if (spot.clearance >= room) canvas.badge(columnName(index), spot.at);
    else {
      canvas.circle(spot.at, 0.35, true);
      callouts.push({ from: spot.at, side: 'right', label: { badge: columnName(index) } });
    }
  }
  return callouts;
}
