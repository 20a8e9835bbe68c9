import svgpath from 'svgpath';
import type { DrawingProblem } from './drawing-problem.ts';
import type { SvgPath } from './svg-path.ts';

/** In millimeters. */
export type PathPoint = { readonly x: number; readonly y: number };

/** One line of the pen, from where it is set down. */
export type PathPart = { readonly points: PathPoint[]; isClosed: boolean };

type Path = ReturnType<typeof svgpath>;

/** Millimeters by which straight stretches miss a curve at most. */
export const MISS = 0.03;

/** Our judgment: no outline that is cut by hand has more points. */
const MOST_POINTS = 2000;

/** Millimeters from where a drawing measures: a number beyond this is a slip, and would not reckon. */
const FARTHEST = 1e6;

/** The parts of a path, which draw something each, with points along its curves. */
export function partsOf({ data, perUnit }: SvgPath): readonly PathPart[] | DrawingProblem {
  // The library takes curves through points for granted that SVG does not have.
  const foreign = /r/iu.exec(data);
  if (foreign) return { kind: 'no path data', what: `it has the command "${foreign[0]}"` };
  const path = svgpath(data).scale(perUnit).abs();
  const wrong: unknown = Reflect.get(path, 'err');
  if (typeof wrong === 'string' && wrong !== '') return { kind: 'no path data', what: wrong };
  if (!isNear(path)) return { kind: 'no path data', what: 'a number in it is too large' };
  const { parts, count } = flatten(path.unshort().unarc());
  return count > MOST_POINTS ? { kind: 'points', count, most: MOST_POINTS } : parts;
}

function isNear(path: Path): boolean {
  let isSo = true;
  path.iterate(([, ...numbers]) => {
    isSo &&= numbers.every((each) => Math.abs(each) <= FARTHEST);
  });
  return isSo;
}

/** A path of lines and curves as points; of more than there may be only their number. */
function flatten(path: Path): { readonly parts: readonly PathPart[]; readonly count: number } {
  const parts: PathPart[] = [];
  let [count, part]: [number, PathPart | undefined] = [0, undefined];
  path.iterate((segment, _, x, y) => {
    if (segment[0] === 'M') part = undefined;
    else if (segment[0] === 'Z' || segment[0] === 'z') {
      if (part) part.isClosed = true;
      part = undefined;
    } else {
      // What is drawn behind a Z begins another part.
      const drawn = part ?? { points: [{ x, y }], isClosed: false };
      if (!part) parts.push(drawn);
      part = drawn;
      const curve = curveOf(segment, { x, y });
      count += curve.stretches;
      if (count <= MOST_POINTS) drawn.points.push(...pointsAlong(curve));
    }
  });
  return { parts, count };
}

/** A cubic curve and into how many stretches it is cut: a straight line is one of one. */
type Curve = {
  readonly knots: readonly [PathPoint, PathPoint, PathPoint, PathPoint];
  readonly stretches: number;
};

type PathSegment = Parameters<Parameters<Path['iterate']>[0]>[0];

function curveOf(segment: PathSegment, from: PathPoint): Curve {
  switch (segment[0]) {
    case 'H':
      return straight(from, { x: segment[1], y: from.y });
    case 'V':
      return straight(from, { x: from.x, y: segment[1] });
    case 'L':
      return straight(from, { x: segment[1], y: segment[2] });
    case 'Q': {
      const [, x, y, to, down] = segment;
      const end = { x: to, y: down };
      return curved([from, twoThirds(from, { x, y }), twoThirds(end, { x, y }), end]);
    }
    case 'C': {
      const [, a, b, c, d, to, down] = segment;
      return curved([from, { x: a, y: b }, { x: c, y: d }, { x: to, y: down }]);
    }
    default:
      throw new Error(`no such command was to be left in a path: ${segment[0]}`);
  }
}

function straight(from: PathPoint, to: PathPoint): Curve {
  return { knots: [from, from, to, to], stretches: 1 };
}

/** A quadratic curve is a cubic one whose inner points are two thirds of the way to its own. */
function twoThirds(end: PathPoint, inner: PathPoint): PathPoint {
  return { x: end.x + ((inner.x - end.x) * 2) / 3, y: end.y + ((inner.y - end.y) * 2) / 3 };
}

/** As many stretches as keep near a curve: by its second differences. */
function curved(knots: Curve['knots']): Curve {
  const [a, b, c, d] = knots;
  const bend = (p: PathPoint, q: PathPoint, r: PathPoint): number =>
    Math.hypot(p.x - 2 * q.x + r.x, p.y - 2 * q.y + r.y);
  const stretches = Math.ceil(Math.sqrt((6 * Math.max(bend(a, b, c), bend(b, c, d))) / (8 * MISS)));
  return { knots, stretches: Math.max(1, stretches) };
}

/** The ends of its stretches. */
function pointsAlong({ knots: [a, b, c, d], stretches }: Curve): PathPoint[] {
  return Array.from({ length: stretches }, (_, index) => {
    const t = (index + 1) / stretches;
    const at = (...[p, q, r, s]: readonly [number, number, number, number]): number =>
      (1 - t) ** 3 * p + 3 * (1 - t) ** 2 * t * q + 3 * (1 - t) * t ** 2 * r + t ** 3 * s;
    return { x: at(a.x, b.x, c.x, d.x), y: at(a.y, b.y, c.y, d.y) };
  });
}
