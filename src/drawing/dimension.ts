import type { Point2 } from '../shape/flat-polygon.ts';
import type { Canvas } from './canvas.ts';
import { extentOf, type Label } from './lettering.ts';
import type { DrawnBox } from './region.ts';
import { spread } from './spread.ts';

/** `across`: along x, the line above or below what is measured. `upright`: along y, the line left or right of it. */
type RowAxis = 'across' | 'upright';

/** Where a dimension line runs: along an axis, at `row`, measuring something whose nearest edge is at `edge`. */
export type DimensionRow = { readonly axis: RowAxis; readonly edge: number; readonly row: number };

/** From where to where along an axis. */
type FromTo = readonly [from: number, to: number];

/** Below this length (in millimeters) arrows stand outside, pointing in. */
const ROOM_FOR_ARROWS = 5;
/** How far the line of such an arrow reaches. */
const TAIL = 3.6;
const LINE_TO_LABEL = 1.3;
const LEADER = 2.6;

/** A dimension line with an arrow at each end, its label beyond it. */
export function dimension(
  canvas: Canvas,
  { axis, edge, row }: DimensionRow,
  span: FromTo,
  label: Label,
): void {
  const [from, to] = span;
  const outward = Math.sign(row - edge) || 1;
  const at = placer(axis);
  for (const end of [from, to])
    canvas.line('extension', [at(end, edge + outward * 0.8), at(end, row + outward * 0.8)]);
  const tail = tailOf(from, to);
  const inside = tail === 0;
  canvas.line('dimension', [at(from - tail, row), at(to + tail, row)]);
  canvas.arrow(at(from, row), degreesAlong(axis, inside ? -1 : 1));
  canvas.arrow(at(to, row), degreesAlong(axis, inside ? 1 : -1));
  setBeyond(canvas, { axis, edge, row: row + outward * LINE_TO_LABEL }, (from + to) / 2, label);
}

/** The width of a box below it and its height beside it, each so far away from its edge. */
export function dimensionSize(
  canvas: Canvas,
  { left, top, right, bottom }: DrawnBox,
  [width, height]: readonly [Label, Label],
  [below, beside]: readonly [number, number],
): void {
  dimension(canvas, { axis: 'across', edge: bottom, row: bottom + below }, [left, right], width);
  dimension(canvas, { axis: 'upright', edge: right, row: right + beside }, [top, bottom], height);
}

/** How far a dimension line reaches beyond what it measures. */
export function tailOf(from: number, to: number): number {
  return to - from >= ROOM_FOR_ARROWS ? 0 : TAIL;
}

/** One position of a running dimension. */
type Mark = { readonly at: number; readonly label: Label };

/**
 * Positions measured from one edge, all on one line: a ring where it starts, an arrow at each position. Labels stand
 * as near to their positions as they can without touching, led to by a kinked line.
 */
export function runningDimension(
  canvas: Canvas,
  { axis, edge, row }: DimensionRow,
  origin: number,
  marks: readonly Mark[],
): FromTo {
  const size = canvas.lettering;
  const outward = Math.sign(row - edge) || 1;
  const at = placer(axis);
  const ordered = marks.toSorted((a, b) => Math.abs(a.at - origin) - Math.abs(b.at - origin));
  const farthest = ordered.at(-1);
  if (!farthest) return [origin, origin];
  canvas.line('extension', [at(origin, edge + outward * 0.8), at(origin, row)]);
  canvas.line('dimension', [at(origin, row), at(farthest.at, row)]);
  canvas.circle(at(origin, row), 0.6);
  const middles = spread(
    ordered.map((mark) => ({ at: mark.at, size: alongSize(axis, mark.label, size) })),
    size * (axis === 'across' ? 0.45 : 0.8),
  );
  const led = ordered.map((mark, index) => ({ ...mark, middle: middles[index] ?? mark.at }));
  // Steep enough to follow, however far a label had to give way.
  const leader = Math.max(LEADER, ...led.map((mark) => 0.4 * Math.abs(mark.at - mark.middle)));
  let before = origin;
  for (const { middle, ...mark } of led) {
    canvas.line('extension', [
      at(mark.at, edge + outward * 0.8),
      at(mark.at, row),
      at(middle, row + outward * leader),
    ]);
    pointAt(canvas, at(mark.at, row), axis, mark.at - before);
    setBeyond(canvas, { axis, edge, row: row + outward * (leader + 0.6) }, middle, mark.label);
    before = mark.at;
  }
  const half = (mark: Mark): number => alongSize(axis, mark.label, size) / 2;
  return [
    Math.min(...led.map((mark) => mark.middle - half(mark))),
    Math.max(...led.map((mark) => mark.middle + half(mark))),
  ];
}

/** An arrow, or a dot where there is no room for one. */
function pointAt(canvas: Canvas, tip: Point2, axis: RowAxis, step: number): void {
  if (Math.abs(step) > 2.4) canvas.arrow(tip, degreesAlong(axis, step));
  else canvas.circle(tip, 0.3, true);
}

/** Sets a label on the far side of a row from its edge, its middle so far along. */
export function setBeyond(
  canvas: Canvas,
  line: DimensionRow,
  middle: number,
  label: Label,
  strong = true,
): void {
  const { axis, edge, row } = line;
  const outward = Math.sign(row - edge) || 1;
  if (axis === 'across')
    canvas.label(label, { x: middle, y: row }, { strong, sits: outward < 0 ? 'over' : 'under' });
  else canvas.label(label, { x: row, y: middle }, { strong, anchor: outward < 0 ? 'end' : 'start' });
}

/** How much room a label takes along an axis. */
export function alongSize(axis: RowAxis, label: Label, size: number): number {
  const { width, height } = extentOf(label);
  return (axis === 'across' ? width : height) * size;
}

/** Points by how far they are along an axis, and where across it. */
export function placer(axis: RowAxis): (along: number, across: number) => Point2 {
  return (along, across) => (axis === 'across' ? { x: along, y: across } : { x: across, y: along });
}

function degreesAlong(axis: RowAxis, way: number): number {
  if (axis === 'across') return way < 0 ? 180 : 0;
  return way < 0 ? 270 : 90;
}
