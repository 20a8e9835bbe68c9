import type { Editions } from '../edition/editions.ts';
import type { Length } from '../measure/length.ts';
import type { Paper } from '../project/model.ts';
import type { Net } from '../shape/net.ts';
import { Canvas, type Drawing } from './canvas.ts';
import { drawCover } from './cover.ts';
import { drawnNetOf } from './drawn-net.ts';
import { keyEntries } from './key.ts';
import { roomAbove, stripOn } from './page-strip.ts';
import { type FoldsAlong, type Page, pageOf, type Tiling, tile } from './pages.ts';
import type { DrawnBox } from './region.ts';
import type { DrawingStyle, DrawnNet } from './style.ts';
import { drawFoot, type FootFacts, footFor } from './template-foot.ts';
import { drawAt, drawTile } from './tile-page.ts';
import { caption, sizeLabel, spokenSize } from './words.ts';

/** One page of an actual-size template, its drawing exactly as large as the paper. */
export type TemplatePage = { readonly page: Page; readonly drawing: Drawing };

/** The paper in the printer, the border on it that stays white, and the project that it is printed for. */
export type PrintSetting = Pick<FootFacts, 'project' | 'state'> & {
  readonly paper: Paper;
  readonly margin: Length;
};

/** The words at the foot of a page of tiles. */
const FOOT = 19;

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
  const { project, state } = setting;
  const told: NumberedPage = { project, state, name: caption(id, style.say), net, page: 1, pages: 1 };
  const { upright, landscape } = pagesOf(setting);
  const together = [upright, landscape].find((page) => {
    const strip = stripOn(page, keyEntries(net), told, style);
    return fits(net.drawn, roomAbove(page, strip));
  });
  if (together) return [alone(together, told, style)];
  const [first, second] = [tiledOn(upright, net.drawn), tiledOn(landscape, net.drawn)];
  const least = second.tiling.tiles.length < first.tiling.tiles.length ? second : first;
  const cover = new Canvas(style);
  drawCover(cover, upright, { id, size: sizeLabel(editions, id, style), net, tiling: least.tiling });
  const all = { ...told, pages: least.tiling.tiles.length + 1 };
  return [finished(cover, upright, all, upright.printable), ...tilePages(all, least, style)];
}

/** A sheet of paper upright and on its side. */
export function pagesOf({ paper, margin }: PrintSetting): Readonly<Record<'upright' | 'landscape', Page>> {
  return { upright: pageOf(paper, margin, false), landscape: pageOf(paper, margin, true) };
}

function fits({ size }: Net, { left, top, right, bottom }: DrawnBox): boolean {
  return size.width.mm <= right - left + 1e-6 && size.height.mm <= bottom - top + 1e-6;
}

/** Everything on one page. */
function alone(page: Page, told: NumberedPage, style: DrawingStyle): TemplatePage {
  const canvas = new Canvas(style);
  const { net } = told;
  const strip = stripOn(page, keyEntries(net), told, style);
  const room = roomAbove(page, strip);
  // From the corner, so that what is left of the page is one piece of paper.
  drawAt(canvas, net, room.left, room.top);
  strip.draw(canvas);
  return finished(canvas, page, told);
}

/** A sheet laid over pages of one kind. */
type TiledSheet = { readonly page: Page; readonly tiling: Tiling };

/** The whole printable part is used where one page without a foot does. */
function tiledOn(page: Page, net: Net): TiledSheet {
  const { left, top, right, bottom } = page.printable;
  const foot = fits(net, page.printable) && fillsPage(page, net) ? 0 : FOOT;
  return { page, tiling: tile(net.size, right - left, bottom - top - foot, foldsAlong(net)) };
}

function foldsAlong({ folds }: Net): FoldsAlong {
  return {
    across: folds.filter(({ from, to }) => from.x.equals(to.x)).map(({ from }) => from.x.mm),
    down: folds.filter(({ from, to }) => from.y.equals(to.y)).map(({ from }) => from.y.mm),
  };
}

/** The tiles behind the cover, each with a foot that there is room for. */
function tilePages(
  told: NumberedPage,
  { page, tiling }: TiledSheet,
  style: DrawingStyle,
): readonly TemplatePage[] {
  const { drawn } = told.net;
  const foot = tiling.tiles.length > 1 || !fillsPage(page, drawn) ? page.printable : undefined;
  return tiling.tiles.map((_, index) => {
    const canvas = new Canvas(style);
    drawTile(canvas, page, told.net, tiling, index);
    return finished(canvas, page, { ...told, page: index + 2 }, foot);
  });
}

function fillsPage({ printable }: Page, net: Net): boolean {
  return !fits(net, { ...printable, bottom: printable.bottom - FOOT });
}

/** Which page of which piece. */
type NumberedPage = FootFacts & { readonly net: DrawnNet };

/** The page, with its foot along the lower edge of a box if it has none yet and there is room. */
function finished(canvas: Canvas, page: Page, { net, ...told }: NumberedPage, foot?: DrawnBox): TemplatePage {
  const { style } = canvas;
  if (foot) drawFoot(canvas, footFor(told, foot.right - foot.left, style), foot);
  const size = spokenSize({ inch: net.inch.size, metric: net.metric.size }, style);
  const alternative = style.say('drawing-actual-size', { ...told, size });
  const frame = { left: 0, top: 0, right: page.width, bottom: page.height };
  return { page, drawing: canvas.drawing('actual-size', alternative, frame) };
}
