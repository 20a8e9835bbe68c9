import type { Edge, FoldDirection } from '../project/net-as-written.ts';
import type { Point2 } from './flat-polygon.ts';
import type { BoardScores, FlatPoint, Net } from './net.ts';

/** A line on the flat sheet, from end to end, in millimeters. */
type SheetLine = { readonly from: Point2; readonly to: Point2 };

/** How far beside a line a fold may lie that is on it, in millimeters: less than any two lines are apart. */
const BESIDE = 0.01;

/** How the paper folds along each position of a row of scores: in no way where what was scored is cut away. */
export function foldsAtScores(net: Net, scores: BoardScores): readonly (readonly FoldDirection[])[] {
  return scores.at.map(({ mm }) => foldsOn(net, boardLine(net, scores, mm)));
}

/** The same along each line that is scored at an angle. */
export function foldsAtSlants(net: Net): readonly (readonly FoldDirection[])[] {
  return (net.slants ?? []).map(({ from, to }) => foldsOn(net, { from: pointOf(from), to: pointOf(to) }));
}

function foldsOn({ folds }: Net, line: SheetLine): readonly FoldDirection[] {
  const on = folds.filter(({ from, to }) => isOn(line, pointOf(from), pointOf(to)));
  return [...new Set(on.map(({ direction }) => direction))];
}

function pointOf({ x, y }: FlatPoint): Point2 {
  return { x: x.mm, y: y.mm };
}

/** Where a score lies on the sheet; a run is counted from the edge that lies along the top of the board. */
function boardLine({ size }: Net, { from, run }: BoardScores, at: number): SheetLine {
  const [width, height] = [size.width.mm, size.height.mm];
  const isUpright = from === 'left' || from === 'right';
  const [across, along] = isUpright ? [width, height] : [height, width];
  const [begin, end] = run ? [run.from.mm, run.to.mm] : [0, along];
  const place = COUNTS_ON.has(from) ? at : across - at;
  // The board has the top edge above for the left one, the left for the bottom, and so on round.
  const ends = from === 'left' || from === 'bottom' ? [begin, end] : [along - begin, along - end];
  const [one = 0, other = 0] = ends;
  return isUpright
    ? { from: { x: place, y: one }, to: { x: place, y: other } }
    : { from: { x: one, y: place }, to: { x: other, y: place } };
}

/** The edges that positions are counted from as points are. */
const COUNTS_ON: ReadonlySet<Edge> = new Set(['left', 'top']);

/** Whether a stretch lies along a line, its middle between the line's ends. */
function isOn({ from, to }: SheetLine, start: Point2, end: Point2): boolean {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const off = ({ x, y }: Point2): number => Math.abs((x - from.x) * along.y - (y - from.y) * along.x);
  const middle = { x: (start.x + end.x) / 2, y: (start.y + end.y) / 2 };
  const reach = (middle.x - from.x) * along.x + (middle.y - from.y) * along.y;
  return off(start) < BESIDE && off(end) < BESIDE && reach > 0 && reach < length;
}
