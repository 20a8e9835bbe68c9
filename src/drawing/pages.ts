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

/** Where folds lie on a sheet that run up and down it, in millimeters from its left, and where those across, from its top. */
export type FoldsAlong = { readonly across: readonly number[]; readonly down: readonly number[] };

/**
 * Covers a sheet with as few equal tiles as its size needs, neighbors overlapping: the sheet in their middle, or as near
 * to it as keeps every seam off the folds.
 */
export function tile(
  sheet: Size,
  tileWidth: number,
  tileHeight: number,
  folds: FoldsAlong = { across: [], down: [] },
): Tiling {
  const [width, height] = [sheet.width.mm, sheet.height.mm];
  const [columns, rows] = [countOf(width, tileWidth), countOf(height, tileHeight)];
  const left = startOf(width, columns, tileWidth, folds.across);
  const top = startOf(height, rows, tileHeight, folds.down);
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

/** How far a seam keeps off a fold: half of the overlap, so that neither page's edge comes to lie on it. */
const OFF_FOLD = OVERLAP / 2 + 1;

/** Where the first of some tiles begins, no later than the sheet. */
function startOf(length: number, count: number, tileLength: number, folds: readonly number[]): number {
  const slack = spanOf(count, tileLength) - length;
  const offFold = (start: number): number => {
    const seams = Array.from(
      { length: count - 1 },
      (_, index) => start + (index + 1) * (tileLength - OVERLAP) + OVERLAP / 2,
    );
    return Math.min(OFF_FOLD, ...seams.flatMap((seam) => folds.map((fold) => Math.abs(seam - fold))));
  };
  // From the middle outward, a millimeter at a time to either side.
  const shifts = Array.from({ length: Math.floor(slack / 2) }, (_, index) => [index + 1, -index - 1]).flat();
  const starts = [0, ...shifts].map((shift) => shift - slack / 2);
  return starts.reduce((best, start) => (offFold(start) > offFold(best) + 1e-9 ? start : best));
}

function countOf(length: number, tileLength: number): number {
  return Math.max(1, Math.ceil((length - OVERLAP - 1e-6) / (tileLength - OVERLAP)));
}

function spanOf(count: number, tileLength: number): number {
  return count * (tileLength - OVERLAP) + OVERLAP;
}
