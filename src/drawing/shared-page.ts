import type { Editions } from '../edition/editions.ts';
import { readRef } from '../project/ref.ts';
import { semicolon } from '../words/typographic.ts';
import { type PrintSetting, pagesOf, type TemplatePage } from './actual-size.ts';
import { Canvas } from './canvas.ts';
import { drawnNetOf } from './drawn-net.ts';
import { type KeyEntry, keyEntries } from './key.ts';
import { plain, widthOf } from './lettering.ts';
import { roomAbove, stripOn } from './page-strip.ts';
import type { Page } from './pages.ts';
import type { DrawnBox } from './region.ts';
import { drawNet } from './sheet.ts';
import type { DrawingStyle, DrawnNet } from './style.ts';
import { drawAt } from './tile-page.ts';
import { caption, listed, spokenSize } from './words.ts';

/** A piece, how it is called and how many there are of it: what stands under it; and the room that both take. */
type SmallPiece = {
  readonly net: DrawnNet;
  readonly name: string;
  readonly label: string;
  readonly width: number;
  readonly height: number;
};

const LETTERING = 3.4;
/** Between two pieces, and from a piece to its name. */
const GAP = 6;
const TO_NAME = 2;

/**
 * Those of some pieces that share pages: all that are flat and so small that several find room on one; where only one
 * is, a larger piece beside which it finds room, and it. None where one would be alone.
 */
export function smallPieces(
  editions: Editions,
  ids: readonly string[],
  setting: PrintSetting,
  style: DrawingStyle,
): readonly string[] {
  const { printable } = pagesOf(setting).upright;
  const small = ids.filter((id) => {
    const piece = pieceOf(editions, id, style);
    if (!piece || piece.net.drawn.folds.length > 0) return false;
    const most = Math.max(
      piece.width / (printable.right - printable.left),
      (2.4 * piece.height) / (printable.bottom - printable.top),
    );
    return most <= 1;
  });
  const [own, ...others] = small;
  if (own === undefined || others.length > 0) return small;
  const host = ids.find((id) => id !== own && pageWithAll(editions, [id, own], setting, style) !== undefined);
  return host === undefined ? [] : [host, own];
}

/** The page, upright or on its side, that holds some pieces together. */
function pageWithAll(
  editions: Editions,
  ids: readonly string[],
  setting: PrintSetting,
  style: DrawingStyle,
): Page | undefined {
  const pieces = ids.flatMap((id) => pieceOf(editions, id, style) ?? []);
  const { upright, landscape } = pagesOf(setting);
  return [upright, landscape].find((page) => {
    const room = roomFor(page, pieces, setting, style);
    const fit = pieces.every(
      ({ width, height }) => width <= room.right - room.left && height <= room.bottom - room.top,
    );
    return fit && inShelves(pieces, room).length === 1;
  });
}

/** What a page has for pieces above its strip. */
function roomFor(
  page: Page,
  pieces: readonly SmallPiece[],
  { project, state }: PrintSetting,
  style: DrawingStyle,
): DrawnBox {
  const name = listed(
    pieces.map((each) => each.name),
    style.say,
  );
  return roomAbove(
    page,
    stripOn(page, entriesOf(pieces), { project, state, name, page: 1, pages: 1 }, style),
  );
}

function entriesOf(pieces: readonly SmallPiece[]): readonly KeyEntry[] {
  return [...new Set(pieces.flatMap(({ net }) => keyEntries(net)))];
}

function pieceOf(editions: Editions, id: string, style: DrawingStyle): SmallPiece | undefined {
  const net = drawnNetOf(editions, style.shown[0], id);
  if (!net) return undefined;
  const count = editions[style.shown[0]].project.pieces.get(readRef(id).piece)?.count.value ?? 1;
  const name = caption(id, style.say);
  const label = count > 1 ? `${name} × ${count}` : name;
  const { width, height } = net.drawn.size;
  const wide = Math.max(width.mm, widthOf(plain(label)) * LETTERING);
  return { net, name, label, width: wide, height: height.mm + TO_NAME + LETTERING };
}

/** Pieces at 1:1, as many on a page as find room, each over its name and count. */
export function sharedPages(
  editions: Editions,
  ids: readonly string[],
  setting: PrintSetting,
  style: DrawingStyle,
): readonly TemplatePage[] {
  const pieces = ids.flatMap((id) => pieceOf(editions, id, style) ?? []);
  const page = pageWithAll(editions, ids, setting, style) ?? pagesOf(setting).upright;
  const entries = entriesOf(pieces);
  const { project, state } = setting;
  const room = roomFor(page, pieces, setting, style);
  const filled = inShelves(pieces, room);
  return filled.map((placed, index) => {
    const canvas = new Canvas(style);
    for (const each of placed) drawPiece(canvas, each);
    const names = listed(
      placed.map(({ name }) => name),
      style.say,
    );
    const own = { project, state, name: names, page: index + 1, pages: filled.length };
    stripOn(page, entries, own, style).draw(canvas);
    const sizes = placed.map(
      ({ net, label }) =>
        `${style.say('labeled', { label })} ${spokenSize({ inch: net.inch.size, metric: net.metric.size }, style)}`,
    );
    const alternative = style.say('drawing-actual-size', { ...own, size: sizes.join(semicolon(style.say)) });
    const frame = { left: 0, top: 0, right: page.width, bottom: page.height };
    return { page, drawing: canvas.drawing('actual-size', alternative, frame) };
  });
}

type PlacedSmallPiece = SmallPiece & { readonly x: number; readonly y: number };

/** From left to right in shelves, the tallest first; what finds no room is on the next page. */
function inShelves(pieces: readonly SmallPiece[], room: DrawnBox): readonly (readonly PlacedSmallPiece[])[] {
  const pages: PlacedSmallPiece[][] = [];
  let [x, y, shelf] = [room.left, room.top, 0];
  for (const piece of pieces.toSorted((a, b) => b.height - a.height)) {
    if (x > room.left && x + piece.width > room.right) [x, y, shelf] = [room.left, y + shelf + GAP, 0];
    if (pages.length === 0 || y + piece.height > room.bottom) {
      pages.push([]);
      [x, y, shelf] = [room.left, room.top, 0];
    }
    pages.at(-1)?.push({ ...piece, x, y });
    [x, shelf] = [x + piece.width + GAP, Math.max(shelf, piece.height)];
  }
  return pages;
}

function drawPiece(canvas: Canvas, { net, label, width, height, x, y }: PlacedSmallPiece): void {
  const left = x + (width - net.drawn.size.width.mm) / 2;
  // The name of a flat piece is the one under it.
  if (net.drawn.folds.length > 0) drawAt(canvas, net, left, y);
  else drawNet(canvas, net, { scale: 1, left, top: y });
  const at = { x: x + width / 2, y: y + height - LETTERING };
  canvas.label([plain(label)], at, { size: LETTERING, sits: 'under', strong: true });
}
