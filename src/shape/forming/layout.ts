import { Length } from '../../measure/length.ts';
import type { RoundedCorners } from '../../project/corners.ts';
import type { Cell, FoldDirection } from '../../project/net-as-written.ts';
import { type FoldedBy, type Grid, gridNet, slitsOf } from '../grid.ts';
import type { BoardScores, Nesting, Net, PanelRole } from '../net.ts';
import { cutBack } from './cut-back.ts';

/** How panels fold against each other; `pairs` are `front|front-top`, in either order. */
export type Bend = {
  readonly pairs: readonly string[];
  readonly direction: FoldDirection;
  readonly angle: number;
  /** Where it comes in the folding, from 1. */
  readonly stage: number;
};

/**
 * A form as a picture of its sheet: `cells` names every panel where it lies, row by row from the top, and leaves
 * empty what is trimmed off. Neighbors that no bend names are slit apart.
 */
export type Layout = {
  /** Widths from the left. */
  readonly columns: readonly Length[];
  /** Heights from the top. */
  readonly rows: readonly Length[];
  readonly cells: readonly (readonly string[])[];
  readonly bends: readonly Bend[];
  /** What panels are for, by their names. */
  readonly roles?: Readonly<Record<string, PanelRole>>;
  readonly taper?: readonly string[];
  /** Flaps cut shorter than their cells, and how long they are from their folds. */
  readonly shorten?: { readonly panels: readonly string[]; readonly to: Length };
  /** What sticks to what, in the order it is stuck. */
  readonly glue?: readonly (readonly [string, string])[];
  /** What is meant to move once it is made. */
  readonly opens?: readonly string[];
  /** How the form's own sheet goes into this one. */
  readonly takes?: readonly Nesting[];
  readonly corners?: RoundedCorners | undefined;
};

export function mountain(stage: number, pairs: readonly string[], angle = 90): Bend {
  return { pairs, direction: 'mountain', angle, stage };
}

export function valley(stage: number, pairs: readonly string[], angle = 90): Bend {
  return { pairs, direction: 'valley', angle, stage };
}

/**
 * The net of a layout, scored from the left and from the bottom edge.
 * @throws Error on a layout that is no picture: a bend between panels that are no neighbors, rows of unequal length.
 */
export function layoutNet(layout: Layout): Net {
  const {
    columns,
    rows,
    cells,
    taper = [],
    glue = [],
    opens = [],
    roles = {},
    takes,
    shorten,
    corners,
  } = layout;
  const bends = bendsByPair(layout.bends);
  const grid: Grid = {
    size: { width: Length.sum(columns), height: Length.sum(rows) },
    across: linesBetween(columns),
    down: linesBetween(rows),
    cells,
    names: namesOf(layout),
    roles: new Map(Object.entries(roles)),
    foldAt: (_seam, panels) => bends.get(pairOf(...panels)),
    taper,
    glue: glue.map(([from, to]) => ({ from, to })),
    opens,
    scores: boardScores(layout),
    corners,
  };
  const net = gridNet(grid);
  const bent = new Set(net.folds.map(({ panels }) => pairOf(...panels)));
  const stray = [...bends.keys()].find((pair) => !bent.has(pair));
  if (stray !== undefined) throw new Error(`the layout bends ${stray}, which are no neighbors`);
  const slit = slitsOf(grid).map((each) => each.slit);
  const inOrder = slit.toSorted((a, b) => a.line - b.line || a.from - b.from);
  const cuts = { trim: trimmedCells(layout), slit: inOrder, taper, shorten: [] };
  const whole = { ...net, cuts, ...(takes && { takes }) };
  return shorten ? cutBack(whole, shorten.panels, shorten.to) : whole;
}

function bendsByPair(bends: readonly Bend[]): Map<string, FoldedBy> {
  return new Map(
    bends.flatMap(({ pairs, ...bend }) =>
      pairs.map((pair) => {
        const [first = '', second = ''] = pair.split('|');
        return [pairOf(first, second), bend] as const;
      }),
    ),
  );
}

/** The same for both orders of two names. */
function pairOf(first: string, second: string): string {
  return first < second ? `${first}|${second}` : `${second}|${first}`;
}

function namesOf({ cells, columns, rows }: Layout): ReadonlySet<string> {
  if (cells.length !== rows.length || cells.some((row) => row.length !== columns.length)) {
    throw new Error('the layout has cells outside its columns and rows');
  }
  const named = cells.flat().filter((name) => name !== '');
  const names = new Set(named);
  if (names.size < named.length) throw new Error('the layout names two panels alike');
  return names;
}

function trimmedCells({ cells }: Layout): Cell[] {
  return cells.flatMap((names, row) => names.flatMap((name, column) => (name ? [] : [{ column, row }])));
}

/** As said at the board: from the left edge, then a quarter turn, from the bottom edge. */
function boardScores({ columns, rows }: Layout): BoardScores[] {
  const scores: BoardScores[] = [
    { from: 'left', at: linesBetween(columns) },
    { from: 'bottom', at: linesBetween(rows.toReversed()) },
  ];
  return scores.filter(({ at }) => at.length > 0);
}

/** The lines between stretches laid end to end. */
function linesBetween(stretches: readonly Length[]): Length[] {
  return stretches.slice(0, -1).map((_, index) => Length.sum(stretches.slice(0, index + 1)));
}
