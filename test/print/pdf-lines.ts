import type { Edge, Mark, Point } from './pdf-marks.ts';

/** A straight line on the page, in millimeters. A dashed one runs from its first dash to its last. */
export type Line = {
  readonly from: Point;
  readonly to: Point;
  readonly width: number;
  readonly color: string;
  /** How many dashes it is drawn with; 1 for a continuous line. */
  readonly dashes: number;
};

/** A filled shape thicker than this is an area, not a line, in millimeters. */
const THICKEST = 1;

/** How far the middle of a dash may lie beside the line that the dashes before it form, in millimeters. */
const BESIDE = 0.05;

/** The widest gap between two dashes of one line, in millimeters. */
const WIDEST_GAP = 8;

export function distance(first: Point, second: Point): number {
  return Math.hypot(second.x - first.x, second.y - first.y);
}

/** How far a point lies beside the endless line through two others; to one side positive. */
export function beside(point: Point, from: Point, to: Point): number {
  const length = distance(from, to);
  return ((to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x)) / length;
}

function middle(first: Point, second: Point): Point {
  return { x: (first.x + second.x) / 2, y: (first.y + second.y) / 2 };
}

/**
 * The line along the middle of a thin filled shape, undefined for one that is not thin. Browsers print a dash as the
 * outline of its ink, so that this is what a dash, a dot or a drawn border is in the file. Rounded ends are the ink of
 * a round pen and belong to no length.
 */
function spine(mark: Mark): Line | undefined {
  const longest = mark.edges.reduce((most, edge) =>
    distance(edge.from, edge.to) > distance(most.from, most.to) ? edge : most,
  );
  const length = distance(longest.from, longest.to);
  const along = { x: (longest.to.x - longest.from.x) / length, y: (longest.to.y - longest.from.y) / length };
  const points = mark.edges.map(({ to }) => ({
    u: (to.x - longest.from.x) * along.x + (to.y - longest.from.y) * along.y,
    v: (to.y - longest.from.y) * along.x - (to.x - longest.from.x) * along.y,
  }));
  const range = (values: readonly number[]): [number, number] => [Math.min(...values), Math.max(...values)];
  const [uFrom, uTo] = range(points.map(({ u }) => u));
  const [vFrom, vTo] = range(points.map(({ v }) => v));
  const width = vTo - vFrom;
  if (width > THICKEST || width > uTo - uFrom + BESIDE) return undefined;
  const cap = mark.edges.some(({ curved }) => curved) ? width / 2 : 0;
  const v = (vFrom + vTo) / 2;
  const at = (u: number): Point => ({
    x: longest.from.x + u * along.x - v * along.y,
    y: longest.from.y + u * along.y + v * along.x,
  });
  return { from: at(uFrom + cap), to: at(uTo - cap), width, color: mark.color, dashes: 1 };
}

/** The two ends among four that lie farthest apart, in the direction of the first line. */
function span(first: Line, second: Line): Pick<Line, 'from' | 'to'> {
  const ends = [second.from, second.to];
  const near = Math.min(...ends.map((end) => distance(end, first.from)));
  const far = Math.min(...ends.map((end) => distance(end, first.to)));
  const nearer = near < far ? first.to : first.from;
  const farthest = ends.reduce((most, end) => (distance(end, nearer) > distance(most, nearer) ? end : most));
  return { from: nearer, to: farthest };
}

function continues(run: Line, next: Line): boolean {
  const center = middle(next.from, next.to);
  const gap = Math.min(
    ...[run.from, run.to].flatMap((end) => [distance(end, next.from), distance(end, next.to)]),
  );
  if (gap > WIDEST_GAP || Math.abs(run.width - next.width) > BESIDE) return false;
  const { from, to } = span(run, next);
  const middles = run.dashes === 1 ? [middle(run.from, run.to), center] : [run.from, run.to, center];
  return middles.every((point) => Math.abs(beside(point, from, to)) <= BESIDE);
}

/** Joins the dashes that one operator drew into the lines they make. */
function joined(dashes: readonly Line[]): Line[] {
  const runs: Line[] = [];
  for (const dash of dashes) {
    const run = runs.at(-1);
    if (run && continues(run, dash)) {
      runs[runs.length - 1] = { ...run, ...span(run, dash), dashes: run.dashes + 1 };
    } else runs.push(dash);
  }
  return runs;
}

function asLine({ from, to }: Edge, { width, color }: Mark): Line {
  return { from, to, width, color, dashes: 1 };
}

/** Every straight line among the marks of a page: stroked edges as they are, dashes joined to the line they make. */
export function readLines(marks: readonly Mark[]): Line[] {
  const strokes = marks
    .filter(({ kind }) => kind === 'stroke')
    .flatMap((mark) => mark.edges.filter(({ curved }) => !curved).map((edge) => asLine(edge, mark)));
  const operators = new Map<number, Line[]>();
  for (const mark of marks) {
    if (mark.kind !== 'fill') continue;
    const line = spine(mark);
    if (line) operators.set(mark.operator, [...(operators.get(mark.operator) ?? []), line]);
  }
  return [...strokes, ...[...operators.values()].flatMap(joined)];
}

/** How exactly a line must lie where it is looked for, in millimeters. */
export type Tolerance = {
  /** How far either end may lie beside the expected line. */
  readonly beside: number;
  /** How far either end may lie before or behind the expected end; a dashed line may end with a gap. */
  readonly ends: number;
};

/** The lines of a page that lie where one is expected, whichever end they were drawn from. */
export function linesAt(lines: readonly Line[], from: Point, to: Point, tolerance: Tolerance): Line[] {
  const fits = (line: Line, start: Point, end: Point): boolean =>
    Math.abs(beside(line.from, start, end)) <= tolerance.beside &&
    Math.abs(beside(line.to, start, end)) <= tolerance.beside &&
    distance(line.from, start) <= tolerance.ends + tolerance.beside &&
    distance(line.to, end) <= tolerance.ends + tolerance.beside;
  return lines.filter((line) => fits(line, from, to) || fits(line, to, from));
}
