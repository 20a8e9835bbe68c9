import type { Length } from '../measure/length.ts';
import type { Cell, PatchName, PatchPart } from '../project/net-as-written.ts';
import { cellName } from './cells.ts';
import { isSamePoint, partBeside } from './exact.ts';
import { edgesOf } from './flat-polygon.ts';
import type { FlatPoint, FlatSegment } from './net.ts';
import { boxCorners } from './outline.ts';

/** Where the score lines of a sheet lie. */
export type GridLines = {
  /** The sheet's width, then its height. */
  readonly size: { readonly width: Length; readonly height: Length };
  /** The vertical score lines, from the left edge, rising, inside the sheet. */
  readonly across: readonly Length[];
  /** The horizontal score lines, from the top edge, rising, inside the sheet. */
  readonly down: readonly Length[];
  /** Score lines at an angle, each from a crossing of the others (or of the edges) to another. */
  readonly slants?: readonly FlatSegment[];
};

/** What no score line crosses: a cell, or the part of one beside an angled line. Convex, clockwise. */
export type Patch = PatchName & { readonly outline: readonly FlatPoint[] };

/** `C2`, or `C2 left` of a cell that an angled line cuts in two. */
export function patchName({ cell, part }: PatchName): string {
  return part ? `${cellName(cell)} ${part}` : cellName(cell);
}

/** Every patch of a sheet, cell by cell, row by row. @throws Error when the lines are out of order. */
export function patchesOf({ size, across, down, slants = [] }: GridLines): readonly Patch[] {
  const columns = stretchesOf(size.width, across);
  const rows = stretchesOf(size.height, down);
  return rows.flatMap(([top, bottom], row) =>
    columns.flatMap(([left, right], column) =>
      cutUp({ column, row }, boxCorners({ left, top, right, bottom }), slants),
    ),
  );
}

/** From each line to the next, the sheet's edges included. */
function stretchesOf(length: Length, lines: readonly Length[]): (readonly [Length, Length])[] {
  const starts = [length.minus(length), ...lines];
  return starts.map((from, index) => {
    const to = lines[index] ?? length;
    if (!to.greaterThan(from)) throw new Error(`the score lines are out of order at ${to}`);
    return [from, to] as const;
  });
}

const PARTS: Readonly<Record<number, readonly PatchPart[]>> = {
  2: ['left', 'right'],
  3: ['left', 'middle', 'right'],
};

/** A cell as the angled lines leave it: whole, or in parts from left to right. */
function cutUp(cell: Cell, box: readonly FlatPoint[], slants: readonly FlatSegment[]): Patch[] {
  const parts = slants.reduce<readonly (readonly FlatPoint[])[]>(
    (outlines, slant) =>
      outlines.flatMap((outline) => {
        if (!liesWithin(slant, outline)) return [outline];
        const halves = ([1, -1] as const).map((side) => partBeside(outline, slant, side));
        return halves.every(isBroad) ? halves : [outline];
      }),
    [box],
  );
  if (parts.length < 2) return [{ cell, outline: box }];
  const names = PARTS[parts.length] ?? [];
  const inOrder = parts.toSorted(
    (a, b) => middle(a, 'x') - middle(b, 'x') || middle(a, 'y') - middle(b, 'y'),
  );
  return inOrder.map((outline, index) => ({ cell, part: names[index] ?? 'middle', outline }));
}

/** Whether a slant, which runs from corner to corner of cells, runs through this one and not only its line does. */
function liesWithin({ from, to }: FlatSegment, outline: readonly FlatPoint[]): boolean {
  return (['x', 'y'] as const).every((axis) => {
    const [a, b] = from[axis].lessThan(to[axis]) ? [from[axis], to[axis]] : [to[axis], from[axis]];
    return (
      outline.some((point) => point[axis].greaterThan(a)) && outline.some((point) => point[axis].lessThan(b))
    );
  });
}

function isBroad(outline: readonly FlatPoint[]): boolean {
  return outline.length > 2;
}

function middle(outline: readonly FlatPoint[], axis: 'x' | 'y'): number {
  return outline.reduce((sum, point) => sum + point[axis].mm, 0) / outline.length;
}

/** The stretch of a score line between two cells side by side; `along` is the row (or column) they share. */
type LineStretch = {
  readonly between: 'columns' | 'rows';
  readonly line: number;
  readonly along: number;
};

/** Two patches side by side and what lies between them: a stretch of a line, or an angled one within a cell. */
export type Seam = FlatSegment & {
  readonly patches: readonly [Patch, Patch];
  readonly stretch?: LineStretch;
};

/** Every seam of a sheet, cell by cell: those within it, at its right and under it. */
export function seamsOf(patches: readonly Patch[]): readonly Seam[] {
  const inCell = new Map<string, Patch[]>();
  for (const patch of patches) {
    const name = cellName(patch.cell);
    inCell.set(name, [...(inCell.get(name) ?? []), patch]);
  }
  return [...inCell.values()].flatMap((own) => {
    const [{ cell } = { cell: { column: 0, row: 0 } }] = own;
    const { column, row } = cell;
    const right = inCell.get(cellName({ column: column + 1, row })) ?? [];
    const under = inCell.get(cellName({ column, row: row + 1 })) ?? [];
    return [
      ...own.flatMap((patch, index) => own.slice(index + 1).flatMap((other) => slantBetween(patch, other))),
      ...own.flatMap((patch) => right.flatMap((other) => sideBetween(patch, other, 'columns'))),
      ...own.flatMap((patch) => under.flatMap((other) => sideBetween(patch, other, 'rows'))),
    ];
  });
}

function slantBetween(patch: Patch, other: Patch): Seam[] {
  const back = edgesOf(other.outline);
  return edgesOf(patch.outline).flatMap(([from, to]) =>
    back.some(([start, end]) => isSamePoint(start, to) && isSamePoint(end, from))
      ? [{ patches: [patch, other] as const, from, to }]
      : [],
  );
}

/** What a patch shares with one at its right, or under it; from the top down, or from left to right. */
function sideBetween(patch: Patch, other: Patch, between: 'columns' | 'rows'): Seam[] {
  const { column, row } = patch.cell;
  const stretch =
    between === 'columns'
      ? ({ between, line: column, along: row } as const)
      : ({ between, line: row, along: column } as const);
  const [fixed, free] = between === 'columns' ? (['x', 'y'] as const) : (['y', 'x'] as const);
  const onLine = ({ outline }: Patch): FlatPoint[] => {
    const edge = outline.map((point) => point[fixed]);
    const own = edge.reduce((most, each) => (most.lessThan(each) ? each : most));
    const least = edge.reduce((far, each) => (each.lessThan(far) ? each : far));
    const line = outline === patch.outline ? own : least;
    const points = outline.filter((point) => point[fixed].equals(line));
    return points.toSorted((a, b) => a[free].compare(b[free]));
  };
  const [[start, end], [begin, stop]] = [onLine(patch), onLine(other)];
  if (!start || !end || !begin || !stop || !start[fixed].equals(begin[fixed])) return [];
  const from = start[free].lessThan(begin[free]) ? begin : start;
  const to = stop[free].lessThan(end[free]) ? stop : end;
  return from[free].lessThan(to[free]) ? [{ patches: [patch, other], stretch, from, to }] : [];
}
