import { EDGES } from '../project/net-as-written.ts';
import { columnName } from '../shape/cells.ts';
import { boxCorners } from '../shape/outline.ts';
import { Canvas } from './canvas.ts';
import { sheetBox } from './outline.ts';
import { OVERLAP, type Page, type Tiling } from './pages.ts';
import { drawNames } from './panel-names.ts';
import type { DrawnBox } from './region.ts';
import { drawNet } from './sheet.ts';
import type { DrawnNet } from './style.ts';

/** One tile on its page: its part of the net, the middles of its overlaps, and the marks it shares with its neighbors. */
export function drawTile(
  canvas: Canvas,
  { printable }: Page,
  net: DrawnNet,
  { tiles, matches, columns }: Tiling,
  index: number,
): void {
  const own = tiles[index];
  if (!own) return;
  const { shows, column } = own;
  const [width, height] = [shows.right - shows.left, shows.bottom - shows.top];
  const { left, top } = printable;
  const box = { left, top, right: left + width, bottom: top + height };
  const part = new Canvas(canvas.style);
  const inset = {
    left: column > 0 ? OVERLAP : 0,
    top: index >= columns ? OVERLAP : 0,
    right: column + 1 < columns ? OVERLAP : 0,
    bottom: index + columns < tiles.length ? OVERLAP : 0,
  };
  drawAt(part, net, left - shows.left, top - shows.top, inner(box, inset));
  drawSeams(part, box, inset);
  for (const match of matches) {
    if (!match.tiles.includes(index)) continue;
    const at = { x: match.at.x - shows.left + left, y: match.at.y - shows.top + top };
    part.badge(columnName(match.letter), at);
  }
  canvas.window(box, part);
}

/** A box without its inset, or a share of it. */
function inner({ left, top, right, bottom }: DrawnBox, inset: DrawnBox, share = 1): DrawnBox {
  return {
    left: left + inset.left * share,
    top: top + inset.top * share,
    right: right - inset.right * share,
    bottom: bottom - inset.bottom * share,
  };
}

/** The middle of each overlap, from edge to edge of the window. */
function drawSeams(canvas: Canvas, box: DrawnBox, inset: DrawnBox): void {
  const seam = inner(box, inset, 0.5);
  for (const side of EDGES) {
    const across = side === 'left' || side === 'right';
    const middle = across ? { left: seam[side], right: seam[side] } : { top: seam[side], bottom: seam[side] };
    const [from, , to] = boxCorners({ ...box, ...middle });
    if (inset[side] > 0 && from && to) canvas.line('flat', [from, to]);
  }
}

/** The net at full size, its corner at `left`, `top`. Names keep to a part of it. */
export function drawAt(
  canvas: Canvas,
  net: DrawnNet,
  left: number,
  top: number,
  within: DrawnBox = sheetBox(net.drawn, { scale: 1, left, top }),
): void {
  const frame = { scale: 1, left, top };
  drawNet(canvas, net, frame);
  drawNames(canvas, net, frame, { numbering: false, within });
}
