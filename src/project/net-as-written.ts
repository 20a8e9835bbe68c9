import type { Length } from '../measure/length.ts';
import type { At, Place } from './source.ts';

export const EDGES = ['left', 'right', 'top', 'bottom'] as const;
export type Edge = (typeof EDGES)[number];

/** Positions scored with one edge against the fence of the board. */
export type ScoreGroup = { readonly from: At<Edge>; readonly at: readonly At<Length>[] };

/** A cell of the grid the score lines make: column 0 is the leftmost (A), row 0 the top one (1). */
export type Cell = { readonly column: number; readonly row: number };

/** A cell named by its place (`B3`) or by the name of its panel (`tab`), as written. */
export type CellName = At<string>;

/** `A|B 1-2`: a cut along the score line between two neighbouring columns (or rows), through the rows (or columns) named. */
export type Slit = {
  readonly between: 'columns' | 'rows';
  /** The line lies between index `line` and `line + 1`. */
  readonly line: number;
  readonly from: number;
  readonly to: number;
  readonly at: Place;
};

export type FoldDirection = 'mountain' | 'valley' | 'flat';

/** `1|2: valley 90`: how the score line between two neighbours is folded, seen from outside. */
export type FoldSetting = {
  readonly between: 'columns' | 'rows';
  readonly line: number;
  readonly direction: FoldDirection;
  /** Degrees from flat; 0 for `flat`. */
  readonly angle: number;
  readonly at: Place;
};

export type NetAsWritten = {
  readonly score: readonly ScoreGroup[];
  readonly panels: readonly { readonly name: At<string>; readonly cell: At<Cell> }[];
  readonly trim: readonly CellName[];
  readonly slit: readonly Slit[];
  readonly taper: readonly CellName[];
  readonly folds: readonly FoldSetting[];
  readonly glue: readonly { readonly from: CellName; readonly to: CellName }[];
  /** Panels that are meant to move once all is made. */
  readonly opens: readonly CellName[];
};
