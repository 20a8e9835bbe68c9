import {
  areaOf,
  boundsOf,
  breadthOf,
  edgesOf,
  gapBetween,
  type Point2,
  signedDouble,
} from './flat-polygon.ts';

/** What two convex polygons share, convex again; empty where they share no more than an edge. */
export function shared(subject: readonly Point2[], clip: readonly Point2[]): readonly Point2[] {
  let kept = subject;
  for (const inside of edgeSides(clip)) kept = keepWhere(kept, inside);
  return kept;
}

/** For each edge of a convex polygon a linear function that is positive on its inner side. */
function edgeSides(polygon: readonly Point2[]): ((point: Point2) => number)[] {
  const sense = Math.sign(signedDouble(polygon));
  return edgesOf(polygon).map(
    ([from, to]) =>
      ({ x, y }) =>
        sense * ((to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x)),
  );
}

/** Convex polygons without what they share with others, as convex polygons. */
export function without(
  polygons: readonly (readonly Point2[])[],
  holes: readonly (readonly Point2[])[],
): readonly (readonly Point2[])[] {
  return holes.reduce((rest, hole) => rest.flatMap((part) => cutOut(part, hole)), polygons);
}

/** Square millimeters that are nothing. */
const NO_AREA = 1e-6;

function cutOut(subject: readonly Point2[], hole: readonly Point2[]): readonly (readonly Point2[])[] {
  if (areaOf(shared(subject, hole)) < NO_AREA) return [subject];
  const parts: (readonly Point2[])[] = [];
  let rest = subject;
  for (const inside of edgeSides(hole)) {
    parts.push(keepWhere(rest, (point) => -inside(point)));
    rest = keepWhere(rest, inside);
  }
  return parts.filter((part) => areaOf(part) > NO_AREA);
}

/** What others leave uncovered of a polygon, as convex parts at least `least` broad: a sliver is none. */
export function uncovered(
  polygon: readonly Point2[],
  covers: readonly (readonly Point2[])[],
  least: number,
): readonly (readonly Point2[])[] {
  const holes = covers.flatMap((cover) => convexParts(cover));
  return without(convexParts(polygon), holes).filter((part) => breadthOf(part) > least);
}

/** How large convex polygons are together, and how far they reach in each direction, in millimeters. */
export type Overlap = { readonly area: number; readonly width: number; readonly height: number };

/** What two polygons share; their sides must not cross themselves. */
export function commonPart(first: readonly Point2[], second: readonly Point2[]): Overlap {
  return extentOf(commonParts(first, second));
}

/** The same as convex parts. */
export function commonParts(
  first: readonly Point2[],
  second: readonly Point2[],
): readonly (readonly Point2[])[] {
  if (gapBetween(boundsOf(first), boundsOf(second)) > 0) return [];
  const others = convexParts(second);
  const parts = convexParts(first).flatMap((part) => others.map((other) => shared(part, other)));
  return parts.filter((part) => areaOf(part) > NO_AREA);
}

/** How large convex polygons are together, and how far they reach. */
export function extentOf(parts: readonly (readonly Point2[])[]): Overlap {
  const points = parts.flat();
  if (points.length === 0) return { area: 0, width: 0, height: 0 };
  const { left, right, bottom, top } = boundsOf(points);
  return {
    area: parts.reduce((sum, part) => sum + areaOf(part), 0),
    width: right - left,
    height: top - bottom,
  };
}

/** The part of a convex polygon where a linear function is not negative. */
function keepWhere(polygon: readonly Point2[], measure: (point: Point2) => number): readonly Point2[] {
  const kept: Point2[] = [];
  const [first] = polygon;
  if (!first) return kept;
  const measured = measure(first);
  let [a, here] = [first, measured];
  for (let index = 1; index <= polygon.length; index += 1) {
    const b = polygon[index] ?? first;
    const there = b === first ? measured : measure(b);
    if (here >= 0) kept.push(a);
    if ((here > 0 && there < 0) || (here < 0 && there > 0)) kept.push(mixed(a, b, here / (here - there)));
    [a, here] = [b, there];
  }
  return kept;
}

function mixed(a: Point2, b: Point2, share: number): Point2 {
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
}

/** A polygon as convex parts: itself if it is convex, else triangles. Its sides must not cross. */
export function convexParts<P extends Point2>(polygon: readonly P[]): readonly (readonly P[])[] {
  const sense = Math.sign(signedDouble(polygon));
  const rest = [...polygon];
  if (rest.every((_, index) => turnAt(rest, index) * sense >= -1e-9)) return [rest];
  const parts: P[][] = [];
  while (rest.length > 3) {
    const ear = rest.findIndex((_, index) => isEar(rest, index, sense));
    const [a, b, c] = cornerAt(rest, Math.max(ear, 0));
    if (!a || !b || !c) break;
    parts.push([a, b, c]);
    rest.splice(Math.max(ear, 0), 1);
  }
  return [...parts, rest];
}

function cornerAt<P extends Point2>(polygon: readonly P[], index: number): (P | undefined)[] {
  return [polygon.at(index - 1), polygon[index], polygon[(index + 1) % polygon.length]];
}

function turnAt(polygon: readonly Point2[], index: number): number {
  const [a, b, c] = cornerAt(polygon, index);
  return a && b && c ? signedDouble([a, b, c]) : 0;
}

function isEar(polygon: readonly Point2[], index: number, sense: number): boolean {
  if (turnAt(polygon, index) * sense <= 0) return false;
  const [a, b, c] = cornerAt(polygon, index);
  if (!a || !b || !c) return false;
  return polygon.every((point) => [a, b, c].includes(point) || !isWithin(point, [a, b, c], sense));
}

function isWithin(point: Point2, triangle: readonly Point2[], sense: number): boolean {
  return edgesOf(triangle).every(([from, to]) => sense * signedDouble([from, to, point]) >= 0);
}
