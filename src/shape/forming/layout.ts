import { Length } from '../../measure/length.ts';
import type { Cell, FoldDirection } from '../../project/model.ts';
import { cellName } from '../cells.ts';
import { type GridFold, type GridSlit, gridNet } from '../grid.ts';
import type { BoardScores, Net, PanelRole } from '../net.ts';

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
 * empty what is trimmed off. Neighbours that no bend names are slit apart.
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
  /** What sticks to what, in the order it is stuck. */
  readonly glue?: readonly (readonly [string, string])[];
  readonly corners?: Length | undefined;
};

export function mountain(stage: number, pairs: readonly string[], angle = 90): Bend {
  return { pairs, direction: 'mountain', angle, stage };
}

export function valley(stage: number, pairs: readonly string[], angle = 90): Bend {
  return { pairs, direction: 'valley', angle, stage };
}

/**
 * The net of a layout, scored from the left and from the bottom edge.
 * @throws Error on a layout that is no picture: a bend between panels that are no neighbours, rows of unequal length.
 */
export function layoutNet(layout: Layout): Net {
  const names = namesOf(layout);
  const bends = bendsByPair(layout.bends);
  const neighbours = neighboursIn(layout);
  const folds: GridFold[] = [];
  const slits: GridSlit[] = [];
  for (const { pair, between, line, along } of neighbours) {
    const bend = bends.get(pair);
    const stretch = { between, line, from: along, to: along };
    if (bend) folds.push({ ...stretch, ...bend });
    else slits.push(stretch);
  }
  const known = new Set(neighbours.map(({ pair }) => pair));
  const stray = [...bends.keys()].find((pair) => !known.has(pair));
  if (stray !== undefined) throw new Error(`the layout bends ${stray}, which are no neighbours`);
  const net = gridNet({
    size: { width: Length.sum(layout.columns), height: Length.sum(layout.rows) },
    across: positions(layout.columns),
    down: positions(layout.rows),
    names,
    roles: new Map(Object.entries(layout.roles ?? {})),
    trim: trimmedCells(layout).map(cellName),
    slits,
    taper: layout.taper ?? [],
    folds,
    glue: (layout.glue ?? []).map(([from, to]) => ({ from, to })),
    scores: boardScores(layout),
    ...(layout.corners && { corners: layout.corners }),
  });
  return {
    ...net,
    cuts: { trim: trimmedCells(layout), slit: joined(slits), taper: layout.taper ?? [], shorten: [] },
  };
}

/** Slits that follow one another on a line are one cut. */
function joined(slits: readonly GridSlit[]): GridSlit[] {
  const inOrder = slits.toSorted((a, b) => a.line - b.line || a.from - b.from);
  const result: GridSlit[] = [];
  for (const slit of inOrder) {
    const index = result.findIndex(
      ({ between, line, to }) => between === slit.between && line === slit.line && to + 1 === slit.from,
    );
    const before = result[index];
    if (before) result[index] = { ...before, to: slit.to };
    else result.push(slit);
  }
  return result;
}

type Neighbours = {
  readonly pair: string;
  readonly between: 'columns' | 'rows';
  readonly line: number;
  readonly along: number;
};

function neighboursIn({ cells }: Layout): Neighbours[] {
  return cells.flatMap((row, r) =>
    row.flatMap((name, c): Neighbours[] => {
      const right = cells[r]?.[c + 1];
      const under = cells[r + 1]?.[c];
      return [
        ...(name && right
          ? [{ pair: pairOf(name, right), between: 'columns' as const, line: c, along: r }]
          : []),
        ...(name && under
          ? [{ pair: pairOf(name, under), between: 'rows' as const, line: r, along: c }]
          : []),
      ];
    }),
  );
}

function bendsByPair(bends: readonly Bend[]): Map<string, Omit<Bend, 'pairs'>> {
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

function namesOf(layout: Layout): Map<string, Cell> {
  const places = placesOf(layout).filter(({ name }) => name !== '');
  const names = new Map(places.map(({ name, cell }) => [name, cell]));
  if (names.size < places.length) throw new Error('the layout names two panels alike');
  return names;
}

function trimmedCells(layout: Layout): Cell[] {
  return placesOf(layout)
    .filter(({ name }) => name === '')
    .map(({ cell }) => cell);
}

function placesOf({ cells, columns, rows }: Layout): { name: string; cell: Cell }[] {
  if (cells.length !== rows.length || cells.some((row) => row.length !== columns.length)) {
    throw new Error('the layout has cells outside its columns and rows');
  }
  return cells.flatMap((row, r) => row.map((name, c) => ({ name, cell: { column: c, row: r } })));
}

/** As said at the board: from the left edge, then a quarter turn, from the bottom edge. */
function boardScores({ columns, rows }: Layout): BoardScores[] {
  const left = positions(columns);
  const bottom = positions(rows.toReversed());
  return [
    ...(left.length > 0 ? [{ from: 'left' as const, at: left }] : []),
    ...(bottom.length > 0 ? [{ from: 'bottom' as const, at: bottom }] : []),
  ];
}

/** The lines between stretches laid end to end. */
function positions(stretches: readonly Length[]): Length[] {
  return stretches.slice(0, -1).map((_, index) => Length.sum(stretches.slice(0, index + 1)));
}
