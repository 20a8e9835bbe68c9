import type { Net } from '../shape/net.ts';
import { boxCorners } from '../shape/outline.ts';
import { CALIBRATION, drawCalibration } from './calibration.ts';
import type { Canvas } from './canvas.ts';
import { drawKey, keyEntries } from './key.ts';
import { extentOf, type Label, plain, wrapped } from './lettering.ts';
import { cutLines } from './outline.ts';
import type { Page, Tiling } from './pages.ts';
import { boxOf, type DrawnBox } from './region.ts';
import type { DrawnNet } from './style.ts';
import { caption } from './words.ts';

/** What a cover speaks of. */
type TiledPiece = {
  readonly id: string;
  readonly size: Label;
  readonly net: DrawnNet;
  readonly tiling: Tiling;
};

/**
 * The page before a template that needs all its pages for itself: how to print it, what to measure before cutting,
 * how the pages go together, and the key.
 */
export function drawCover(
  canvas: Canvas,
  { printable }: Page,
  { id, size: sizeOnPaper, net, tiling }: TiledPiece,
): void {
  const { say, shown } = canvas.style;
  const size = canvas.lettering * 1.15;
  const width = printable.right - printable.left;
  let y = printable.top + 2;
  const write = (label: Label, height: number, strong: boolean): void => {
    canvas.label(label, { x: printable.left, y }, { size: height, anchor: 'start', sits: 'under', strong });
    y += (extentOf(label).height + 0.8) * height;
  };
  write([plain(say('drawing-cover', { name: caption(id, say) }))], size * 1.7, true);
  write(sizeOnPaper, size, false);
  const several = tiling.tiles.length > 1;
  for (const key of [
    'drawing-print-full',
    shown.length > 1 ? 'drawing-measure-first' : 'drawing-measure-square',
    ...(several ? ['drawing-join-tiles'] : []),
  ])
    write(wrapped(say(key), width / size), size, false);
  y += 3;
  drawCalibration(canvas, { x: printable.left, y });
  y += CALIBRATION.height + 6;
  y = drawKey(canvas, keyEntries(net), { left: printable.left, top: y, width });
  const room = { ...printable, top: y + 6, bottom: printable.bottom - 12 };
  if (several) drawMap(canvas, net.drawn, tiling, room);
}

/** The whole net small, the pages laid over it with their numbers. */
function drawMap(canvas: Canvas, net: Net, { tiles }: Tiling, room: DrawnBox): void {
  const span = boxOf(tiles.flatMap(({ shows }) => boxCorners(shows)));
  const scale = Math.min(
    (room.right - room.left) / (span.right - span.left),
    (room.bottom - room.top) / (span.bottom - span.top),
    0.3,
  );
  const frame = { scale, left: room.left - span.left * scale, top: room.top - span.top * scale };
  for (const line of cutLines(net, frame)) canvas.line('mark', line);
  for (const [index, { shows }] of tiles.entries()) {
    const box = {
      left: frame.left + shows.left * scale,
      top: frame.top + shows.top * scale,
      right: frame.left + shows.right * scale,
      bottom: frame.top + shows.bottom * scale,
    };
    canvas.line('flat', boxCorners(box), true);
    // In the middle, which no other page shows, and clear of the outline at the edges.
    const at = { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 };
    const number = [plain(canvas.style.say('drawing-page', { page: index + 2 }))];
    canvas.label(number, at, { strong: true, halo: true });
  }
}
