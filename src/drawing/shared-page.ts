import type { Editions } from '../edition/editions.ts';
import { readRef } from '../project/ref.ts';
import { type PrintSetting, pagesOf, type TemplatePage } from './actual-size.ts';
import { Canvas } from './canvas.ts';
import { drawnNetOf } from './drawn-net.ts';
import { keyEntries } from './key.ts';
import { plain, widthOf } from './lettering.ts';
import { roomAbove, stripOn } from './page-strip.ts';
import type { DrawnBox } from './region.ts';
import { drawNet } from './sheet.ts';
import type { DrawingStyle, DrawnNet } from './style.ts';
import { caption, listed, spokenSize } from './words.ts';

/** A flat piece, how it is called and how many there are of it: what stands under it; and the room that both take. */
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

/** Those of some pieces that are flat and so small that several find room on one page; none where one alone is. */
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
  return small.length > 1 ? small : [];
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

/** Small flat pieces at 1:1, as many on a page as find room, each over its name and count. */
export function sharedPages(
  editions: Editions,
  ids: readonly string[],
  setting: PrintSetting,
  style: DrawingStyle,
): readonly TemplatePage[] {
  const pieces = ids.flatMap((id) => pieceOf(editions, id, style) ?? []);
  const page = pagesOf(setting).upright;
  const entries = [...new Set(pieces.flatMap(({ net }) => keyEntries(net)))];
  const { project, state } = setting;
  const told = {
    project,
    state,
    name: listed(
      pieces.map(({ name }) => name),
      style.say,
    ),
  };
  const room = roomAbove(page, stripOn(page, entries, { ...told, page: 1, pages: 1 }, style));
  const filled = inShelves(pieces, room);
  return filled.map((placed, index) => {
    const canvas = new Canvas(style);
    for (const each of placed) drawPiece(canvas, each);
    const names = listed(
      placed.map(({ name }) => name),
      style.say,
    );
    const own = { ...told, name: names, page: index + 1, pages: filled.length };
    stripOn(page, entries, own, style).draw(canvas);
    const sizes = placed.map(
      ({ net, label }) => `${label}: ${spokenSize({ inch: net.inch.size, metric: net.metric.size }, style)}`,
    );
    const alternative = style.say('drawing-actual-size', { ...own, size: sizes.join('; ') });
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
  drawNet(canvas, net, { scale: 1, left, top: y });
  const at = { x: x + width / 2, y: y + height - LETTERING };
  canvas.label([plain(label)], at, { size: LETTERING, sits: 'under', strong: true });
}
