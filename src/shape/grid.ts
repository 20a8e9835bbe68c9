import type { Length } from '../measure/length.ts';
import type { Size } from '../measure/size.ts';
import type { Cell, FoldDirection } from '../project/model.ts';
import type { Place } from '../project/source.ts';
import { cellName, parseCell } from './cells.ts';
import type {
  BoardScores,
  FlatBox,
  FlatPoint,
  FlatSegment,
  Fold,
  Mate,
  Net,
  Panel,
  PanelRole,
} from './net.ts';
import { boxCorners, type CornerCut, cutCell, type Hinges } from './outline.ts';

/** A cell by its panel's name (`tab`) or its place (`B3`). */
type CellReference = string;

/** A stretch of the score line between index `line` and `line + 1`, through the rows (or columns) `from` to `to`. */
export type GridSlit = {
  readonly between: 'columns' | 'rows';
  readonly line: number;
  readonly from: number;
  readonly to: number;
};

/** How a score line folds, or (with `from` and `to`) how it does between two cells of it. Later ones win. */
export type GridFold = {
  readonly between: 'columns' | 'rows';
  readonly line: number;
  readonly from?: number;
  readonly to?: number;
  readonly direction: FoldDirection;
  readonly angle: number;
  /** Where the fold comes in the folding, from 1; derived when absent. */
  readonly stage?: number;
};

export type GridMate = { readonly from: CellReference; readonly to: CellReference; readonly at?: Place };

/**
 * A net on a grid of score lines, as explicit nets and most forms are: every cell that is not trimmed is a panel,
 * every stretch of a score line between two panels that is not slit is a fold, mountain 90 unless `folds` says
 * otherwise.
 */
export type Grid = {
  readonly size: Size;
  /** The vertical score lines, from the left edge, rising, inside the sheet. */
  readonly across: readonly Length[];
  /** The horizontal score lines, from the top edge, rising, inside the sheet. */
  readonly down: readonly Length[];
  /** Panel names and their cells. */
  readonly names: ReadonlyMap<string, Cell>;
  /** What named panels are for, of those that are for something. */
  readonly roles?: ReadonlyMap<string, PanelRole>;
  readonly trim: readonly CellReference[];
  readonly slits: readonly GridSlit[];
  /** Cells whose free corners are cut at an angle. */
  readonly taper: readonly CellReference[];
  readonly folds: readonly GridFold[];
  readonly glue: readonly GridMate[];
  /** As said at the board. */
  readonly scores: readonly BoardScores[];
  /** Rounds the free corners of every panel that is not tapered. */
  readonly corners?: Length;
};

const MOUNTAIN: Pick<GridFold, 'direction' | 'angle'> = { direction: 'mountain', angle: 90 };

/**
 * The exact net of a grid.
 * @throws Error on a grid that cannot be: lines out of order, a reference to no cell. What a person wrote is checked
 * before it becomes a grid.
 */
export function gridNet(grid: Grid): Net {
  const lines = { columns: edges(grid.size.width, grid.across), rows: edges(grid.size.height, grid.down) };
  const sheet = new Sheet(grid, lines);
  const cells = sheet.cells();
  const cut = cells.map((cell) => sheet.cutCell(cell));
  return {
    size: grid.size,
    panels: cells.map((cell, index) => sheet.panel(cell, cut[index]?.outline ?? [])),
    folds: sheet.neighbours().flatMap((pair) => sheet.foldBetween(pair)),
    scores: grid.scores,
    slits: joined(sheet.neighbours().flatMap((pair) => sheet.slitBetween(pair))),
    waste: [...sheet.trimmed(), ...cut.flatMap(({ waste }) => waste)],
    glue: grid.glue.map((mate) => sheet.mate(mate)),
  };
}

/** Two cells side by side, and where along the line between them they lie. */
type CellPair = {
  readonly first: Cell;
  readonly second: Cell;
  readonly between: 'columns' | 'rows';
  readonly line: number;
  readonly along: number;
};

type Lines = { readonly columns: readonly Length[]; readonly rows: readonly Length[] };

/** The grid with what is asked of it many times kept at hand. */
class Sheet {
  readonly #grid: Grid;
  readonly #lines: Lines;
  readonly #trimmed: ReadonlySet<string>;
  readonly #tapered: ReadonlySet<string>;
  readonly #nameOf: ReadonlyMap<string, string>;

  constructor(grid: Grid, lines: Lines) {
    this.#grid = grid;
    this.#lines = lines;
    this.#trimmed = new Set(grid.trim.map((reference) => this.#addressOf(reference)));
    this.#tapered = new Set(grid.taper.map((reference) => this.#addressOf(reference)));
    this.#nameOf = new Map([...grid.names].map(([name, cell]) => [cellName(cell), name]));
  }

  cells(): Cell[] {
    return this.#every().filter((cell) => !this.#trimmed.has(cellName(cell)));
  }

  trimmed(): (readonly FlatPoint[])[] {
    const gone = this.#every().filter((cell) => this.#trimmed.has(cellName(cell)));
    return gone.map((cell) => boxCorners(this.#box(cell)));
  }

  neighbours(): CellPair[] {
    const pairs: CellPair[] = [];
    for (const first of this.cells()) {
      const { column, row } = first;
      const right = { column: column + 1, row };
      const under = { column, row: row + 1 };
      if (this.#isPanel(right))
        pairs.push({ first, second: right, between: 'columns', line: column, along: row });
      if (this.#isPanel(under))
        pairs.push({ first, second: under, between: 'rows', line: row, along: column });
    }
    return pairs;
  }

  cutCell(cell: Cell): ReturnType<typeof cutCell> {
    const radius = this.#grid.corners;
    const untapered: CornerCut = radius ? { kind: 'round', radius } : { kind: 'square' };
    const cut: CornerCut = this.#tapered.has(cellName(cell)) ? { kind: 'taper' } : untapered;
    return cutCell(this.#box(cell), this.#hinges(cell), cut);
  }

  panel(cell: Cell, outline: readonly FlatPoint[]): Panel {
    const name = this.#nameOf.get(cellName(cell));
    const box = this.#box(cell);
    if (name === undefined) return { id: cellName(cell), outline, box };
    const role = this.#grid.roles?.get(name);
    return { id: name, name, outline, box, ...(role && { role }) };
  }

  foldBetween(pair: CellPair): Fold[] {
    if (this.#isSlit(pair)) return [];
    const { direction, angle, stage } = this.#settingOf(pair);
    const panels = [this.#idOf(pair.first), this.#idOf(pair.second)] as const;
    return [{ panels, ...this.#segment(pair), direction, angle, ...(stage !== undefined && { stage }) }];
  }

  slitBetween(pair: CellPair): FlatSegment[] {
    return this.#isSlit(pair) ? [this.#segment(pair)] : [];
  }

  mate({ from, to, at }: GridMate): Mate {
    const panels = { from: this.#panelOf(from), to: this.#panelOf(to) };
    return at ? { ...panels, at } : panels;
  }

  #every(): Cell[] {
    const columns = this.#lines.columns.length - 1;
    const rows = this.#lines.rows.length - 1;
    return Array.from({ length: columns * rows }, (_, index) => ({
      column: index % columns,
      row: Math.floor(index / columns),
    }));
  }

  #addressOf(reference: CellReference): string {
    const cell = this.#grid.names.get(reference) ?? parseCell(reference);
    if (!cell || !this.#has(cell)) throw new Error(`the grid has no cell "${reference}"`);
    return cellName(cell);
  }

  #panelOf(reference: CellReference): string {
    const address = this.#addressOf(reference);
    if (this.#trimmed.has(address)) throw new Error(`the cell "${reference}" is trimmed off`);
    return this.#nameOf.get(address) ?? address;
  }

  #idOf(cell: Cell): string {
    return this.#nameOf.get(cellName(cell)) ?? cellName(cell);
  }

  #has({ column, row }: Cell): boolean {
    return column < this.#lines.columns.length - 1 && row < this.#lines.rows.length - 1;
  }

  #isPanel(cell: Cell): boolean {
    return this.#has(cell) && !this.#trimmed.has(cellName(cell));
  }

  #isSlit({ between, line, along }: CellPair): boolean {
    return this.#grid.slits.some(
      (slit) => slit.between === between && slit.line === line && slit.from <= along && along <= slit.to,
    );
  }

  #settingOf({ between, line, along }: CellPair): Pick<GridFold, 'direction' | 'angle' | 'stage'> {
    const setting = this.#grid.folds.findLast(
      (fold) =>
        fold.between === between &&
        fold.line === line &&
        (fold.from ?? 0) <= along &&
        along <= (fold.to ?? along),
    );
    return setting ?? MOUNTAIN;
  }

  #hinges({ column, row }: Cell): Hinges {
    const hinge = (first: Cell, second: Cell, between: 'columns' | 'rows'): boolean => {
      if (first.column < 0 || first.row < 0 || !this.#isPanel(first) || !this.#isPanel(second)) return false;
      const [line, along] = between === 'columns' ? [first.column, first.row] : [first.row, first.column];
      return !this.#isSlit({ first, second, between, line, along });
    };
    const here = { column, row };
    return {
      left: hinge({ column: column - 1, row }, here, 'columns'),
      top: hinge({ column, row: row - 1 }, here, 'rows'),
      right: hinge(here, { column: column + 1, row }, 'columns'),
      bottom: hinge(here, { column, row: row + 1 }, 'rows'),
    };
  }

  #box({ column, row }: Cell): FlatBox {
    const [left, right] = this.#lines.columns.slice(column, column + 2);
    const [top, bottom] = this.#lines.rows.slice(row, row + 2);
    if (!left || !right || !top || !bottom)
      throw new Error(`the grid has no cell ${cellName({ column, row })}`);
    return { left, top, right, bottom };
  }

  #segment({ second, between }: CellPair): FlatSegment {
    const { left, top, right, bottom } = this.#box(second);
    const from = { x: left, y: top };
    return between === 'columns' ? { from, to: { x: left, y: bottom } } : { from, to: { x: right, y: top } };
  }
}

function edges(length: Length, scores: readonly Length[]): Length[] {
  const all = [length.minus(length), ...scores, length];
  const disorder = all.findIndex((each, index) => index > 0 && !each.greaterThan(all[index - 1] ?? each));
  if (disorder > 0) throw new Error(`the score lines are out of order at ${all[disorder]}`);
  return all;
}

/** Slits that follow one another on a line are one cut. */
function joined(slits: readonly FlatSegment[]): FlatSegment[] {
  const result: FlatSegment[] = [];
  for (const slit of slits) {
    const vertical = slit.from.x.equals(slit.to.x);
    const index = result.findIndex(
      ({ from, to }) =>
        from.x.equals(to.x) === vertical && to.x.equals(slit.from.x) && to.y.equals(slit.from.y),
    );
    const before = result[index];
    if (before) result[index] = { from: before.from, to: slit.to };
    else result.push(slit);
  }
  return result;
}
