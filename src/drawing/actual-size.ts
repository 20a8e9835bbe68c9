import type { Editions } from '../edition/editions.ts';
import type { Length } from '../measure/length.ts';
import type { Paper } from '../project/model.ts';
import type { Point2 } from '../shape/flat-polygon.ts';
import type { Net } from '../shape/net.ts';
import { CALIBRATION, drawCalibration } from './calibration.ts';
import { Canvas, type Drawing } from './canvas.ts';
import { drawCover } from './cover.ts';
import { drawnNetOf } from './drawn-net.ts';
import { drawKey, keyEntries } from './key.ts';
import { wrapped } from './lettering.ts';
import { type Page, pageOf, type Tiling, tile } from './pages.ts';
import type { DrawnBox } from './region.ts';
import type { DrawingStyle, DrawnNet } from './style.ts';
import { drawAt, drawTile } from './tile-page.ts';
import { caption, spokenSize } from './words.ts';

/** One page of an actual-size template, its drawing exactly as large as the paper. */
export type TemplatePage = { readonly page: Page; readonly drawing: Drawing };

/** The paper in the printer and the border on it that stays white. */
type PrintSetting = { readonly paper: Paper; readonly margin: Length };

/** The line of words at the foot of a page. */
const FOOT = 7;
const GAP = 3;

/**
 * A piece (or a further sheet of it, `box.lid`) at 1:1 on pages: on one with the squares to measure, if there is room;
 * else behind a page that holds these; else on tiles that overlap. Empty when the piece has no net.
 */
export function templatePages(
  editions: Editions,
  id: string,
  setting: PrintSetting,
  style: DrawingStyle,
): readonly TemplatePage[] {
  const net = drawnNetOf(editions, style.shown[0], id);
  if (!net) return [];
  const { paper, margin } = setting;
  const [upright, landscape] = [pageOf(paper, margin, false), pageOf(paper, margin, true)];
  const together = [upright, landscape].find((page) =>
    fits(net.drawn, roomAbove(page, stripOn(page, net, style))),
  );
  if (together) return [alone(id, net, together, style)];
  const [first, second] = [tiledOn(upright, net.drawn), tiledOn(landscape, net.drawn)];
  const least = second.tiling.tiles.length < first.tiling.tiles.length ? second : first;
  const cover = new Canvas(style);
  drawCover(cover, upright, { id, net, tiling: least.tiling });
  const told = { id, net, pages: least.tiling.tiles.length + 1 };
  return [
    finished(cover, upright, { ...told, number: 1 }, upright.printable),
    ...tilePages(told, least, style),
  ];
}

/** What stands under a net on its page: the calibration, the key and the foot, side by side or below one another. */
type Strip = { readonly height: number; readonly words: DrawnBox; readonly calibration: Point2 };

function stripOn({ printable }: Page, net: DrawnNet, style: DrawingStyle): Strip {
  const { left, right, bottom } = printable;
  const beside = right - left - CALIBRATION.width - 2 * GAP;
  if (beside >= 90) {
    const height = Math.max(CALIBRATION.height, keyHeight(net, beside, style) + 2 * FOOT);
    const words = { left: right - beside, top: bottom - height, right, bottom };
    return { height, words, calibration: { x: left, y: bottom - CALIBRATION.height } };
  }
  const key = keyHeight(net, right - left, style);
  const height = key + GAP + CALIBRATION.height + FOOT;
  const calibration = { x: left, y: bottom - FOOT - CALIBRATION.height };
  return { height, words: { left, top: bottom - height, right, bottom }, calibration };
}

function keyHeight(net: DrawnNet, width: number, style: DrawingStyle): number {
  return drawKey(new Canvas(style), keyEntries(net), { left: 0, top: 0, width });
}

function roomAbove(page: Page, { height }: Pick<Strip, 'height'>): DrawnBox {
  return { ...page.printable, bottom: page.printable.bottom - height - GAP };
}

function fits({ size }: Net, { left, top, right, bottom }: DrawnBox): boolean {
  return size.width.mm <= right - left + 1e-6 && size.height.mm <= bottom - top + 1e-6;
}

/** Everything on one page. */
function alone(id: string, net: DrawnNet, page: Page, style: DrawingStyle): TemplatePage {
  const canvas = new Canvas(style);
  const { words, calibration, ...strip } = stripOn(page, net, style);
  const room = roomAbove(page, strip);
  const { width, height } = net.drawn.size;
  const left = (room.left + room.right - width.mm) / 2;
  drawAt(canvas, net, left, room.top + (room.bottom - room.top - height.mm) / 2);
  const key = { left: words.left, top: words.top, width: words.right - words.left };
  drawKey(canvas, keyEntries(net), key);
  drawCalibration(canvas, calibration);
  return finished(canvas, page, { id, net, number: 1, pages: 1 }, words);
}

/** A sheet laid over pages of one kind. */
type TiledSheet = { readonly page: Page; readonly tiling: Tiling };

/** The whole printable part is used where one page without a foot does. */
function tiledOn(page: Page, net: Net): TiledSheet {
  const { left, top, right, bottom } = page.printable;
  const foot = fits(net, page.printable) ? 0 : FOOT;
  return { page, tiling: tile(net.size, right - left, bottom - top - foot) };
}

/** The tiles behind the cover, each with a foot that there is room for. */
function tilePages(
  told: Omit<NumberedPage, 'number'>,
  { page, tiling }: TiledSheet,
  style: DrawingStyle,
): readonly TemplatePage[] {
  const { drawn } = told.net;
  const foot = tiling.tiles.length > 1 || !fillsPage(page, drawn) ? page.printable : undefined;
  return tiling.tiles.map((_, index) => {
    const canvas = new Canvas(style);
    drawTile(canvas, page, told.net, tiling, index);
    return finished(canvas, page, { ...told, number: index + 2 }, foot);
  });
}

function fillsPage({ printable }: Page, net: Net): boolean {
  return !fits(net, { ...printable, bottom: printable.bottom - FOOT });
}

/** Which page of which piece. */
type NumberedPage = {
  readonly id: string;
  readonly net: DrawnNet;
  readonly number: number;
  readonly pages: number;
};

/** The page with a line of words at its foot, if that has room: along the lower edge of a box, in as many lines as they need. */
function finished(
  canvas: Canvas,
  page: Page,
  { id, net, number, pages }: NumberedPage,
  foot?: DrawnBox,
): TemplatePage {
  const { style } = canvas;
  const told = { name: caption(id, style.say), page: number, pages };
  if (foot) {
    const { left, right, bottom } = foot;
    const size = Math.min(canvas.lettering, 3.4);
    const lines = wrapped(style.say('drawing-foot', told), (right - left) / size);
    canvas.label(lines, { x: left, y: bottom - 1 }, { size, anchor: 'start', sits: 'over' });
  }
  const size = spokenSize({ inch: net.inch.size, metric: net.metric.size }, style);
  const alternative = style.say('drawing-actual-size', { ...told, size });
  const frame = { left: 0, top: 0, right: page.width, bottom: page.height };
  return { page, drawing: canvas.drawing('actual-size', alternative, frame) };
}
