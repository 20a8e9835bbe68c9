import type { Editions } from '../edition/editions.ts';
import type { Ref } from '../project/ref.ts';
import { columnName } from '../shape/cells.ts';
import type { Point2 } from '../shape/flat-polygon.ts';
import { keyholed } from '../shape/openings/keyhole.ts';
import { underOf } from '../shape/shapes.ts';
import { ownNet } from '../shape/sheets.ts';
import { pieceNamed, refNamed } from '../words/names.ts';
import { magnitudeOf } from '../words/reveals.ts';
import { capital } from '../words/typographic.ts';
import { type Callout, setCallouts } from './callouts.ts';
import { Canvas, type Drawing } from './canvas.ts';
import { decorationOf, paintDecoration } from './decoration.ts';
import { type Label, plain, wrapped } from './lettering.ts';
import { type Carry, type Pile, type PiledLayer, type PiledSheet, pileOn } from './pile.ts';
import { boxOf, type Segment } from './region.ts';
import { gapsOf, type RevealGap, spokenReveals } from './reveals.ts';
import { colorOf, type DrawingRoom, type DrawingStyle } from './style.ts';
import { roomiestSpot } from './visible.ts';
import { lengthLabel, listed, sizeLabel, spokenSize } from './words.ts';

/**
 * A base with every layer on it in place, at actual size or the least whole reduction that fits the room: what shows
 * round each is dimensioned, each is lettered and named under the drawing. Undefined when the base isn't known or bears nothing.
 */
export function stackDrawing(
  editions: Editions,
  base: Ref,
  room: DrawingRoom,
  style: DrawingStyle,
): Drawing | undefined {
  const pile = pileOn(editions, base, style.shown[0]);
  if (!pile || pile.placed.length === 0) return undefined;
  const sheets = [pile.sheet, ...pile.placed.map(({ sheet }) => sheet)];
  const box = boxOf(sheets.flatMap(({ outline }) => outline));
  const needed = Math.max((box.right - box.left) / room.width, (box.bottom - box.top) / room.height);
  const reduction = Math.max(1, Math.ceil(needed - 1e-9));
  const scale = 1 / reduction;
  const canvas = new Canvas(style);
  const scaled = (points: readonly Point2[]): Point2[] =>
    points.map(({ x, y }) => ({ x: x * scale, y: y * scale }));
  const drawn = sheets.map((sheet) => scaledSheet(sheet, scaled));
  const outlines = drawn.slice(1).map(({ outline }) => outline);
  const decorations = decorationsIn(pile, editions, style);
  const put = ({ x, y }: Point2): Point2 => ({ x: x * scale, y: y * scale });
  drawSheets(canvas, editions, drawn, (index) => {
    const [decoration, pose] = decorations[index] ?? [];
    if (decoration && pose) paintDecoration(canvas, decoration, (point) => put(pose(point)), false);
  });
  const gaps = gapsOf(pile.placed, scale, canvas.lettering * 2.6);
  const images = decorations.flatMap(([{ images: all }, pose]) =>
    all.map(({ outline }) => scaled(outline.map(pose))),
  );
  const callouts = [...drawReveals(canvas, gaps), ...drawLetters(canvas, outlines, gaps, images)];
  setCallouts(canvas, boxOf(drawn.flatMap(({ outline }) => outline)), callouts);
  const stamped = decorations.map(([decoration]) => stampsIn(decoration, style));
  drawLegend(canvas, pile, stamped);
  const foot = { x: canvas.ink.left, y: canvas.ink.bottom + canvas.lettering * 0.6 };
  const scaleWords = style.say('drawing-scale', { scale: `1:${reduction}` });
  canvas.label([plain(scaleWords)], foot, { anchor: 'start', sits: 'under' });
  return canvas.drawing('stack', describe(pile, style, stamped));
}

/** What is punched and stamped on the base, then on each flat layer, and how it lies in the pile. */
function decorationsIn(
  { base, placed }: Pile,
  editions: Editions,
  { shown: [leading] }: DrawingStyle,
): readonly (readonly [ReturnType<typeof decorationOf>, Carry])[] {
  const { nets } = editions[leading].shapes;
  const under = base.face === 'outside' ? underOf(nets, base) : undefined;
  const panel = base.part === undefined ? undefined : under?.panel;
  return [
    [under ? decorationOf(under.net, panel) : UNDECORATED, (point) => point],
    ...placed.map(({ drawn, pose }) => {
      const net = ownNet(nets, drawn.piece.id.value);
      return [net && net.folds.length === 0 ? decorationOf(net) : UNDECORATED, pose] as const;
    }),
  ];
}

const UNDECORATED = { motifs: [], images: [] };

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

/** The stamps of a decoration, each named once; undefined where there are none. */
function stampsIn({ images }: ReturnType<typeof decorationOf>, { say }: DrawingStyle): string | undefined {
  const stamps = [...new Set(images.map(({ stamp }) => stamp))];
  return stamps.length > 0 ? say('drawing-tells-stamped', { images: listed(stamps, say) }) : undefined;
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
  outlines: readonly Point2[][],
  gaps: readonly RevealGap[],
  images: readonly (readonly Point2[])[],
): Callout[] {
  const callouts: Callout[] = [];
  const lines = gaps.map(({ outer, inner }): Segment => [outer, inner]);
  const room = canvas.lettering * 0.85;
  for (const [index, outline] of outlines.entries()) {
    const covers = outlines.slice(index + 1);
    const spots = [
      roomiestSpot(outline, [...covers, ...images], lines),
      roomiestSpot(outline, covers, lines),
      roomiestSpot(outline, covers, []),
    ].filter((each) => each !== undefined);
    const spot = spots.find(({ clearance }) => clearance >= room) ?? spots.at(-1);
    if (!spot) continue;
    if (spot.clearance >= room) canvas.badge(columnName(index), spot.at);
    else {
      canvas.circle(spot.at, 0.35, true);
      callouts.push({ from: spot.at, side: 'right', label: { badge: columnName(index) } });
    }
  }
  return callouts;
}

/** A layer's letter, name and size, and what is stamped on it: the names would not find room on the drawing itself. */
function drawLegend(canvas: Canvas, pile: Pile, stamped: readonly (string | undefined)[]): void {
  const size = canvas.lettering;
  const left = canvas.ink.left;
  let y = canvas.ink.bottom + size * 1.6;
  const addStamps = (words: string | undefined): void => {
    for (const line of words === undefined ? [] : wrapped(words, LEGEND / size)) {
      canvas.label(
        [line],
        { x: left + size * 2, y: y - size * 0.25 },
        { size: size * 0.85, anchor: 'start' },
      );
      y += size * 1.2;
    }
    if (words !== undefined) y += size * 0.4;
  };
  addStamps(stamped[0]);
  for (const [index, placed] of pile.placed.entries()) {
    const { inch, metric } = placed.layer;
    const [first = [], second] = sizeLabel({ inch: inch.size, metric: metric.size }, canvas.style);
    const other = second ? [{ text: ' · ' }, ...second] : [];
    const line = [
      { text: `${pieceNamed(placed.drawn.piece.id.value, canvas.style.say)}: ` },
      ...first,
      ...other,
    ];
    canvas.badge(columnName(index), { x: left + size * 0.75, y });
    canvas.label([line], { x: left + size * 2, y }, { anchor: 'start' });
    y += size * 1.75;
    addStamps(stamped[index + 1]);
  }
}

/** How wide a line of the legend may be, in millimeters. */
const LEGEND = 50;

function describe(
  { base, placed }: Pile,
  style: DrawingStyle,
  [onBase, ...onLayers]: readonly (string | undefined)[],
): string {
  const { say } = style;
  const stamps = (words: string | undefined): string[] => (words === undefined ? [] : [`${capital(words)}.`]);
  const sentences = placed.flatMap(({ layer, drawn }: PiledLayer, index) => [
    say('drawing-layer', {
      letter: columnName(index),
      name: pieceNamed(drawn.piece.id.value, say),
      size: spokenSize({ inch: layer.inch.size, metric: layer.metric.size }, style),
      base: refNamed(drawn.on, say),
      reveals: spokenReveals(layer, style),
    }),
    ...stamps(onLayers[index]),
  ]);
  const whole = say('drawing-stack', { base: capital(refNamed(base, say)) });
  return [whole, ...stamps(onBase), ...sentences].join(' ');
}
