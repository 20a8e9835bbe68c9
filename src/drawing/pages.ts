import type { Length } from '../measure/length.ts';
import type { Size } from '../measure/size.ts';
import type { Paper } from '../project/model.ts';
import type { Point2 } from '../shape/flat-polygon.ts';
import type { DrawnBox } from './region.ts';

/** A printed page, upright or on its side, and the part of it a printer reaches. Millimeters. */
export type Page = {
  readonly paper: Paper;
  readonly landscape: boolean;
  readonly width: number;
  readonly height: number;
  readonly printable: DrawnBox;
};

/** Letter is 8½ × 11 in, exactly 215.9 × 279.4 mm; A4 is 210 × 297 mm (ISO 216). */
export const SIDES_OF: Readonly<Record<Paper, readonly [number, number]>> = {
  letter: [215.9, 279.4],
  a4: [210, 297],
};

export function pageOf(paper: Paper, margin: Length, landscape: boolean): Page {
  const [short, long] = SIDES_OF[paper];
  const [width, height] = landscape ? [long, short] : [short, long];
  const edge = margin.mm;
  const printable = { left: edge, top: edge, right: width - edge, bottom: height - edge };
  return { paper, landscape, width, height, printable };
}

/** How far neighboring tiles show the same paper. */
export const OVERLAP = 10;

/** One page's part of a sheet: what it shows of it, in millimeters from the sheet's own left and top. */
type Tile = { readonly column: number; readonly shows: DrawnBox };

/** A place where two tiles are laid on each other: in the middle of their overlap, lettered alike on both. */
type Match = {
  readonly letter: number;
  readonly at: Point2;
  readonly tiles: readonly [number, number];
};

/** A sheet laid over pages, in rows. */
export type Tiling = {
  readonly columns: number;
  readonly rows: number;
  readonly tiles: readonly Tile[];
  readonly matches: readonly Match[];
};

/** Covers a sheet with as few equal tiles as its size needs, the sheet in their middle, neighbors overlapping. */
export function tile(sheet: Size, tileWidth: number, tileHeight: number): Tiling {
  const [width, height] = [sheet.width.mm, sheet.height.mm];
  const [columns, rows] = [countOf(width, tileWidth), countOf(height, tileHeight)];
  const left = (width - spanOf(columns, tileWidth)) / 2;
  const top = (height - spanOf(rows, tileHeight)) / 2;
  const tiles = Array.from({ length: columns * rows }, (_, index): Tile => {
    const [column, row] = [index % columns, Math.floor(index / columns)];
    const x = left + column * (tileWidth - OVERLAP);
    const y = top + row * (tileHeight - OVERLAP);
    return { column, shows: { left: x, top: y, right: x + tileWidth, bottom: y + tileHeight } };
  });
  return { columns, rows, tiles, matches: matchesOf(tiles, columns, { width, height }) };
}

/** Two marks for each pair of neighbors, on the middle line of their overlap, within the sheet. */
function matchesOf(
  tiles: readonly Tile[],
  columns: number,
  { width, height }: { readonly width: number; readonly height: number },
): Match[] {
  const pairs = tiles.flatMap(({ column, shows }, index): Omit<Match, 'letter'>[] => {
    const [top, bottom] = [Math.max(shows.top, 0), Math.min(shows.bottom, height)];
    const [left, right] = [Math.max(shows.left, 0), Math.min(shows.right, width)];
    const marks = (next: number, place: (share: number) => Point2): Omit<Match, 'letter'>[] =>
      [0.25, 0.75].map((share) => ({ at: place(share), tiles: [index, next] }));
    const [x, y] = [shows.right - OVERLAP / 2, shows.bottom - OVERLAP / 2];
    const beside = marks(index + 1, (share) => ({ x, y: top + (bottom - top) * share }));
    const under = marks(index + columns, (share) => ({ x: left + (right - left) * share, y }));
    return [...(column + 1 < columns ? beside : []), ...(index + columns < tiles.length ? under : [])];
  });
  return pairs.map((pair, letter) => ({ ...pair, letter }));
}

function countOf(length: number, tileLength: number): number {
  return Math.max(1, Math.ceil((length - OVERLAP - 1e-6) / (tileLength - OVERLAP)));
}

function spanOf(count: number, tileLength: number): number {
  return count * (tileLength - OVERLAP) + OVERLAP;
}
