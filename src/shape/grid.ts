import type { Length } from '../measure/length.ts';
import type { Size } from '../measure/size.ts';
import type { Cell, Slit } from '../project/net-as-written.ts';
import type { BoardScores, FlatBox, FlatSegment, Fold, Mate, Net, Panel, PanelRole } from './net.ts';
import { boxCorners, type CornerCut, cutCell } from './outline.ts';

/** The stretch of a score line between two cells side by side; `along` is the row (or column) they share. */
type LineStretch = Pick<Slit, 'between' | 'line'> & { readonly along: number };

/** How two panels fold against each other; without a stage, that is derived. */
export type FoldedBy = Pick<Fold, 'direction' | 'angle' | 'stage'>;

/** A net on a grid of score lines, as explicit nets and most forms are: every cell that is not trimmed is a panel. */
export type Grid = {
  readonly size: Size;
  /** The vertical score lines, from the left edge, rising, inside the sheet. */
  readonly across: readonly Length[];
  /** The horizontal score lines, from the top edge, rising, inside the sheet. */
  readonly down: readonly Length[];
  /** The panel in each cell, row by row from the top: its name, else the cell's; empty where it is trimmed off. */
  readonly cells: readonly (readonly string[])[];
  /** The panels that have a name. */
  readonly names: ReadonlySet<string>;
  /** What panels are for, of those that are for something. */
  readonly roles: ReadonlyMap<string, PanelRole>;
  /** How two neighbours fold against each other; undefined where they are slit apart. */
  readonly foldAt: (stretch: LineStretch, panels: Fold['panels']) => FoldedBy | undefined;
  /** Panels whose free corners are cut at an angle. */
  readonly taper: readonly string[];
  readonly glue: readonly Mate[];
  /** Panels that are meant to move once all is made. */
  readonly opens?: readonly string[];
  /** As said at the board. */
  readonly scores: readonly BoardScores[];
  /** Rounds the free corners of every panel that is not tapered. */
  readonly corners?: Length | undefined;
};

/**
 * The exact net of a grid.
 * @throws Error on a grid that cannot be: lines out of order, glue on no panel. What a person wrote is checked
 * before it becomes a grid.
 */
export function gridNet(grid: Grid): Net {
  const { size, scores, glue, opens = [], cells, names, roles } = grid;
  const places = placesOf(grid);
  const panels = places.filter(({ id }) => id !== '');
  const seams = seamsOf(grid);
  const cut = panels.map((place) => cutPanel(place, seams, grid));
  const stray = glue
    .flatMap(({ from, to }) => [from, to])
    .find((id) => !cells.some((row) => row.includes(id)));
  if (stray !== undefined) throw new Error(`the grid has no panel "${stray}" to glue`);
  return {
    size,
    panels: panels.map(({ id, box }, index): Panel => {
      const role = roles.get(id);
      const name = names.has(id) && { name: id };
      return { id, ...name, outline: cut[index]?.outline ?? [], box, ...(role && { role }) };
    }),
    folds: seams.flatMap(({ fold }) => fold ?? []),
    scores,
    slits: slitsOf(grid).map(({ segment }) => segment),
    waste: [
      ...places.filter(({ id }) => id === '').map(({ box }) => boxCorners(box)),
      ...cut.flatMap(({ waste }) => waste),
    ],
    glue,
    ...(opens.length > 0 && { opens }),
  };
}

/** The cuts between panels that are slit apart; those that follow one another on a line are one. */
export function slitsOf(grid: Grid): { readonly slit: Omit<Slit, 'at'>; readonly segment: FlatSegment }[] {
  const found: ReturnType<typeof slitsOf> = [];
  for (const { stretch, segment, fold } of seamsOf(grid)) {
    const { between, line, along } = stretch;
    if (fold) continue;
    const index = found.findIndex(
      ({ slit }) => slit.between === between && slit.line === line && slit.to + 1 === along,
    );
    const before = found[index];
    if (before)
      found[index] = {
        slit: { ...before.slit, to: along },
        segment: { from: before.segment.from, to: segment.to },
      };
    else found.push({ slit: { between, line, from: along, to: along }, segment });
  }
  return found;
}

type GridPlace = { readonly id: string; readonly cell: Cell; readonly box: FlatBox };

/** Every cell, row by row. */
function placesOf({ size, across, down, cells }: Grid): GridPlace[] {
  const columns = stretchesOf(size.width, across);
  const rows = stretchesOf(size.height, down);
  return rows.flatMap(([top, bottom], row) =>
    columns.map(([left, right], column) => ({
      id: cells[row]?.[column] ?? '',
      cell: { column, row },
      box: { left, top, right, bottom },
    })),
  );
}

/** From each line to the next, the sheet's edges included. */
function stretchesOf(length: Length, scores: readonly Length[]): (readonly [Length, Length])[] {
  const starts = [length.minus(length), ...scores];
  return starts.map((from, index) => {
    const to = scores[index] ?? length;
    if (!to.greaterThan(from)) throw new Error(`the score lines are out of order at ${to}`);
    return [from, to] as const;
  });
}

/** Two panels side by side, the line between them, and how they fold about it. */
type Seam = {
  readonly panels: Fold['panels'];
  readonly stretch: LineStretch;
  readonly segment: FlatSegment;
  readonly fold?: Fold | undefined;
};

function seamsOf(grid: Grid): Seam[] {
  const seam = (
    id: string,
    other: string | undefined,
    stretch: LineStretch,
    segment: FlatSegment,
  ): Seam[] => {
    if (!id || !other) return [];
    const panels = [id, other] as const;
    const by = grid.foldAt(stretch, panels);
    if (!by) return [{ panels, stretch, segment }];
    const { direction, angle, stage } = by;
    const fold = { panels, ...segment, direction, angle, ...(stage !== undefined && { stage }) };
    return [{ panels, stretch, segment, fold }];
  };
  return placesOf(grid).flatMap(({ id, cell: { column, row }, box }) => {
    const [, topRight, to, bottomLeft] = boxCorners(box);
    const [right, under] = [grid.cells[row]?.[column + 1], grid.cells[row + 1]?.[column]];
    return [
      ...seam(id, right, { between: 'columns', line: column, along: row }, { from: topRight, to }),
      ...seam(id, under, { between: 'rows', line: row, along: column }, { from: bottomLeft, to }),
    ];
  });
}

function cutPanel(
  { id, box }: GridPlace,
  seams: readonly Seam[],
  { taper, corners }: Grid,
): ReturnType<typeof cutCell> {
  const hangs = (between: LineStretch['between'], end: 0 | 1): boolean =>
    seams.some(({ fold, panels, stretch }) => fold && panels[end] === id && stretch.between === between);
  const untapered: CornerCut = corners ? { kind: 'round', radius: corners } : { kind: 'square' };
  const hinges = {
    left: hangs('columns', 1),
    top: hangs('rows', 1),
    right: hangs('columns', 0),
    bottom: hangs('rows', 0),
  };
  return cutCell(box, hinges, taper.includes(id) ? { kind: 'taper' } : untapered);
}
