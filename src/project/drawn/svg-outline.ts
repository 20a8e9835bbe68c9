import { Length } from '../../measure/length.ts';
import { roundMillimeters } from '../../measure/round.ts';
import type { OutlinePoints } from '../grammar/outline-grammar.ts';
import { crossingIn, type GridPoint } from './crossing.ts';
import type { DrawingProblem } from './drawing-problem.ts';
import { MISS, type PathPart, type PathPoint, partsOf } from './path-points.ts';
import { findSvgPath } from './svg-path.ts';

/** Our judgment: no outline for the hand is smaller, and nothing is larger than a meter. Millimeters. */
const [SMALLEST, LARGEST] = [5, 1000];

/** Millimeters between two points that nobody could cut as two. */
const NO_DISTANCE = 0.01;

/** Points are taken to so many parts of a millimeter. */
const PARTS = 10_000;

/** The one closed path of an SVG drawing, at its real size. */
export function readSvgOutline(svg: string): OutlinePoints | DrawingProblem {
  const path = findSvgPath(svg);
  if ('kind' in path) return path;
  const parts = partsOf(path);
  if ('kind' in parts) return parts;
  const [part, ...further] = parts;
  if (!part) return { kind: 'no path data', what: 'it draws nothing' };
  return further.length > 0 ? { kind: 'parts', count: parts.length } : outlineOf(part);
}

function outlineOf({ points: drawn, isClosed }: PathPart): OutlinePoints | DrawingProblem {
  const [first, last] = [drawn[0], drawn.at(-1)];
  const gap = first && last ? distance(first, last) : 0;
  if (!isClosed && gap > MISS) return { kind: 'open', gap: roundMillimeters(gap, 100) };
  const points = withoutDoubles(gap <= MISS ? drawn.slice(0, -1) : drawn);
  if (points.length < 3) return { kind: 'no path data', what: 'it draws nothing' };
  const outline = fromCorner(points);
  const [x, y] = [farthest(outline.map((each) => each.x)), farthest(outline.map((each) => each.y))];
  const isFit = Math.min(x.mm, y.mm) >= SMALLEST && Math.max(x.mm, y.mm) <= LARGEST;
  return isFit ? checked(outline) : { kind: 'size', x, y };
}

function distance(one: PathPoint, other: PathPoint): number {
  return Math.hypot(one.x - other.x, one.y - other.y);
}

/** Without the points that are no distance from the last one that stays, or behind all from the first. */
function withoutDoubles(points: readonly PathPoint[]): readonly PathPoint[] {
  const left: PathPoint[] = [];
  for (const point of points) {
    const before = left.at(-1);
    if (!before || distance(before, point) > NO_DISTANCE) left.push(point);
  }
  const [first] = left;
  const end = left.findLastIndex((point) => !first || distance(first, point) > NO_DISTANCE);
  return left.slice(0, end + 1);
}

/** The points from the left and top of their box. */
function fromCorner(points: readonly PathPoint[]): OutlinePoints {
  const left = points.reduce((least, { x }) => Math.min(least, x), Number.POSITIVE_INFINITY);
  const top = points.reduce((least, { y }) => Math.min(least, y), Number.POSITIVE_INFINITY);
  return points.map(({ x, y }) => ({
    x: roundMillimeters(x - left, PARTS),
    y: roundMillimeters(y - top, PARTS),
  }));
}

function farthest(lengths: readonly Length[]): Length {
  return lengths.reduce((most, each) => Length.max(most, each), Length.zero);
}

/** An outline clockwise, if no two of its stretches meet. */
function checked(outline: OutlinePoints): OutlinePoints | DrawingProblem {
  const points = outline.map(({ x, y }) => ({ x: gridOf(x), y: gridOf(y) }));
  const crossing = crossingIn(points);
  if (!crossing) return turnOf(points) > 0 ? outline : outline.toReversed();
  const [x, y] = [crossing.x, crossing.y].map((each) => roundMillimeters(each / PARTS, PARTS));
  return { kind: 'crosses', x: x ?? Length.zero, y: y ?? Length.zero };
}

function gridOf(length: Length): number {
  return Number(length.over(Length.of(1, PARTS, 'mm')).numerator);
}

/** Twice the area a closed line goes round; negative where it goes counterclockwise on paper. */
function turnOf(points: readonly GridPoint[]): number {
  return points.reduce((sum, { x, y }, index) => {
    const next = points[(index + 1) % points.length] ?? { x, y };
    return sum + x * next.y - next.x * y;
  }, 0);
}
