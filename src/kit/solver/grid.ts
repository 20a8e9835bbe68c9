import { type Blank, stancesOf, stancesOn } from './blank.ts';
import type { Rect } from './cut-tree.ts';
import { type Lengths, normalPositions } from './positions.ts';

/** The positions along one edge of a sheet at which it is worth cutting. */
export type CutAxis = {
  /** Rising, from 0 to the sheet's edge. */
  readonly at: Float64Array;
  /**
   * For a part that reaches to position `i`, cut at position `c` (at most half way): the index of the last position
   * that what lies beyond the cut still reaches.
   */
  readonly beyond: readonly Int32Array[];
};

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
  readonly longest?: number;
  /** The most positions along an edge. */
  readonly most?: number;
};

/** Keeps one search under about a tenth of a second. */
const MOST_POSITIONS = 420;

export function gridOf(blanks: readonly Blank[], sheet: Rect, options: GridOptions = {}): CutGrid {
  const { demand, longest = Number.POSITIVE_INFINITY, most = MOST_POSITIONS } = options;
  const along = (side: 'width' | 'height', end: number): ReturnType<typeof normalPositions> =>
    normalPositions(
      blanks.map((blank, index) => lengthsOf(blank, side, sheet, demand?.[index])),
      end,
      most,
    );
  const across = along('width', sheet.width);
  const down = along('height', sheet.height);
  return {
    blanks,
    sheet,
    across: axisOf(across.at),
    down: axisOf(down.at),
    stances: stancesAt(blanks, across.at, down.at),
    longest,
    exact: across.complete && down.complete,
  };
}

/** Only stances that fit the sheet at all reach positions. */
function lengthsOf(blank: Blank, side: 'width' | 'height', sheet: Rect, demand = Infinity): Lengths {
  const lengths = [...new Set(stancesOn(blank, sheet).map((stance) => stance[side]))];
  const most = lengths.length === 0 ? 0 : Math.min(demand, Math.floor(sheet[side] / Math.min(...lengths)));
  return { lengths, most };
}

function stancesAt(
  blanks: readonly Blank[],
  across: readonly number[],
  down: readonly number[],
): readonly Stance[] {
  const columns = new Map(across.map((position, index) => [position, index]));
  const rows = new Map(down.map((position, index) => [position, index]));
  return blanks.flatMap((blank, index) =>
    stancesOf(blank).flatMap(({ width, height, turned }) => {
      const [column, row] = [columns.get(width), rows.get(height)];
      return column === undefined || row === undefined
        ? []
        : [{ blank: index, turned, across: column, down: row }];
    }),
  );
}

function axisOf(positions: readonly number[]): CutAxis {
  const at = Float64Array.from(positions);
  const beyond = positions.map((end, index) => {
    const cuts: number[] = [];
    let last = index;
    for (const cut of positions) {
      if (2 * cut > end) break;
      while ((at[last] ?? 0) > end - cut) last -= 1;
      cuts.push(last);
    }
    return Int32Array.from(cuts);
  });
  return { at, beyond };
}

/** The index of the position that is exactly `length`; undefined where there is none. */
export function indexOf({ at }: CutAxis, length: number): number | undefined {
  let [low, high] = [0, at.length - 1];
  while (low <= high) {
    const middle = (low + high) >> 1;
    const found = at[middle] ?? 0;
    if (found === length) return middle;
    if (found < length) low = middle + 1;
    else high = middle - 1;
  }
  return undefined;
}
