import { type BlankLengths, type CutAxis, cutAxis, indexOf } from './axis.ts';
import { type Blank, type Rect, stancesOn } from './cut-tree.ts';

/** One way to lay a blank into a part that it fills: indexes into the two axes. */
type Stance = {
  readonly blank: number;
  readonly turned: boolean;
  readonly across: number;
  readonly down: number;
};

/** Where a sheet may be cut for a set of blanks: found once, then searched for many values of the blanks. */
export type CutGrid = {
  readonly blanks: readonly Blank[];
  readonly sheet: Rect;
  readonly across: CutAxis;
  readonly down: CutAxis;
  readonly stances: readonly Stance[];
  /** The longest cut that may be made; infinite where there is no limit. */
  readonly longest: number;
  /** Every position that can matter is there, so that the best pattern on the grid is the best there is. */
  readonly exact: boolean;
};

type GridOptions = {
  /** How many of each blank are wanted at most; any number when absent. */
  readonly demand?: readonly number[];
  readonly longest?: number | undefined;
  /** The most positions along an edge. */
  readonly most?: number;
};

/** Keeps one search under about a tenth of a second. */
const MOST_POSITIONS = 420;

export function gridOf(blanks: readonly Blank[], sheet: Rect, options: GridOptions = {}): CutGrid {
  const { demand, longest = Number.POSITIVE_INFINITY, most = MOST_POSITIONS } = options;
  const along = (side: 'width' | 'height'): CutAxis => {
    const kinds = blanks.map((blank, index) => lengthsOf(blank, side, sheet, demand?.[index]));
    return cutAxis(kinds, sheet[side], most);
  };
  const [across, down] = [along('width'), along('height')];
  const stances = blanks.flatMap((blank, index) =>
    stancesOn(blank, sheet).flatMap(({ width, height, turned }) => {
      const [column, row] = [indexOf(across, width), indexOf(down, height)];
      return column && row ? [{ blank: index, turned, across: column, down: row }] : [];
    }),
  );
  return { blanks, sheet, across, down, stances, longest, exact: across.isComplete && down.isComplete };
}

/** Only stances that fit the sheet at all reach positions. */
function lengthsOf(blank: Blank, side: 'width' | 'height', sheet: Rect, demand = Infinity): BlankLengths {
  const lengths = [...new Set(stancesOn(blank, sheet).map((stance) => stance[side]))];
  return { lengths, most: Math.min(demand, Math.floor(sheet[side] / Math.min(...lengths))) };
}
