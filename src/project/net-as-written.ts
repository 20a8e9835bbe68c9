import type { Length } from '../measure/length.ts';
import type { At, Place } from './source.ts';

export const EDGES = ['left', 'right', 'top', 'bottom'] as const;
export type Edge = (typeof EDGES)[number];

/** Whether an edge runs up and down. */
export function isUpright(edge: Edge): boolean {
  return edge === 'left' || edge === 'right';
}

/** Positions scored with one edge against the fence of the board. */
export type ScoreGroup = { readonly from: At<Edge>; readonly at: readonly At<Length>[] };

/** A cell of the grid the score lines make: column 0 is the leftmost (A), row 0 the top one (1). */
export type Cell = { readonly column: number; readonly row: number };

/** A cell named by its place (`B3`) or by the name of its panel (`tab`), as written. */
export type CellName = At<string>;

/** `A|B 1-2`: a cut along the score line between two neighboring columns (or rows), through the rows (or columns) named. */
export type Slit = {
  readonly between: 'columns' | 'rows';
  /** The line lies between index `line` and `line + 1`. */
  readonly line: number;
  readonly from: number;
  readonly to: number;
  readonly at: Place;
};

export type FoldDirection = 'mountain' | 'valley' | 'flat';

/** What is said of a line: how it is folded, or that there is none. */
export type LineWord = FoldDirection | 'none';

/** A part of a cell that an angled line cuts up. */
export type PatchPart = 'left' | 'middle' | 'right';

/** A cell, or a part of one. */
export type PatchName = { readonly cell: Cell; readonly part?: PatchPart };

/**
 * `1|2`: a whole score line between two neighbors; `1|2 A-C`: its stretch through some cells, as a slit names it;
 * `B1|B2`, `C2 left|C2 right`, `front|B2`: what lies between two cells or parts of cells, as they are named.
 */
export type WrittenLine =
  | (Pick<Slit, 'between' | 'line'> & Partial<Pick<Slit, 'from' | 'to'>>)
  | { readonly cells: readonly [string, string] };

/** `1|2: valley 90`: how a score line, or a stretch of one, is folded, seen from outside. */
export type FoldSetting = {
  readonly line: WrittenLine;
  readonly direction: LineWord;
  /** Degrees from flat; 0 for `flat` and `none`. */
  readonly angle: number;
  readonly at: Place;
};

/** Where score lines cross each other or the edges: a corner of a cell. */
export type GridCorner = {
  readonly cell: Cell;
  readonly upper: boolean;
  readonly left: boolean;
};

/** `{ from: corner B3, to: corner C2 }`: a score line from one corner to another. */
export type Slant = { readonly from: At<GridCorner>; readonly to: At<GridCorner> };

export type NetAsWritten = {
  readonly score: readonly ScoreGroup[];
  readonly slants: readonly Slant[];
  readonly panels: readonly { readonly name: At<string>; readonly cell: At<PatchName> }[];
  readonly trim: readonly CellName[];
  readonly slit: readonly Slit[];
  readonly taper: readonly CellName[];
  readonly folds: readonly FoldSetting[];
  readonly glue: readonly { readonly from: CellName; readonly to: CellName }[];
  /** Panels that are meant to move once all is made. */
  readonly opens: readonly CellName[];
};
