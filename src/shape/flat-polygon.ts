/** A point of a plane that lies somewhere in space, or of a picture (x to the right and y down), in millimeters. */
export type Point2 = { readonly x: number; readonly y: number };

/** The edges of a closed outline, in order. */
export function edgesOf<P>(outline: readonly P[]): (readonly [P, P])[] {
  return outline.map((from, index) => [from, outline[(index + 1) % outline.length] ?? from]);
}

/** Positive when the corners run anticlockwise with y up. */
export function signedArea(polygon: readonly Point2[]): number {
  return signedDouble(polygon) / 2;
}

/** Twice the signed area. */
function signedDouble(polygon: readonly Point2[]): number {
  return edgesOf(polygon).reduce((sum, [a, b]) => sum + (a.x * b.y - b.x * a.y), 0);
}

export function areaOf(polygon: readonly Point2[]): number {
  return Math.abs(signedArea(polygon));
}

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

/** How broad a convex polygon is where it is narrowest. */
export function breadthOf(polygon: readonly Point2[]): number {
  const breadths = edgesOf(polygon).flatMap(([from, to]) => {
    const side = Math.hypot(to.x - from.x, to.y - from.y);
    return side < 1e-9 ? [] : [Math.max(...polygon.map((point) => Math.abs(offLine([from, to], point))))];
  });
  return breadths.length === 0 ? 0 : Math.min(...breadths);
}

/** How far a point lies off the line through two others, positive to one side of it. */
export function offLine([from, to]: readonly [Point2, Point2], point: Point2): number {
  return signedDouble([from, to, point]) / Math.hypot(to.x - from.x, to.y - from.y);
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

/** How far points reach across and up, in millimeters. */
export type Bounds = {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
};

export function boundsOf(points: readonly Point2[]): Bounds {
  const [across, up] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return {
    left: Math.min(...across),
    right: Math.max(...across),
    bottom: Math.min(...up),
    top: Math.max(...up),
  };
}

/** What two polygons are apart at the least, across or up, by their bounds: the quick look before the long one. */
export function gapBetween(one: Bounds, other: Bounds): number {
  const across = Math.max(one.left, other.left) - Math.min(one.right, other.right);
  const up = Math.max(one.bottom, other.bottom) - Math.min(one.top, other.top);
  return Math.max(0, across, up);
}

/** How large convex polygons are together, and how far they reach. */
export function extentOf(parts: readonly (readonly Point2[])[]): Overlap {
  const points = parts.flat();
  if (points.length === 0) return { area: 0, width: 0, height: 0 };
  return {
    area: parts.reduce((sum, part) => sum + areaOf(part), 0),
    width: spread(points.map(({ x }) => x)),
    height: spread(points.map(({ y }) => y)),
  };
}

function spread(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}

/** How far a point lies outside a polygon; 0 within it and on its edges. */
export function distanceOutside(point: Point2, polygon: readonly Point2[]): number {
  return contains(polygon, point) ? 0 : distanceToEdges(point, polygon);
}

/** How far a point lies from the nearest edge of a polygon. */
export function distanceToEdges(point: Point2, polygon: readonly Point2[]): number {
  return Math.min(...edgesOf(polygon).map(([a, b]) => distanceTo(point, a, b)));
}

/** How far a point within a polygon lies from its edges; 0 outside and on them. */
export function depthInside(point: Point2, polygon: readonly Point2[]): number {
  if (!contains(polygon, point)) return 0;
  return Math.min(...edgesOf(polygon).map(([a, b]) => distanceTo(point, a, b)));
}

/** How near the edges of two polygons come to one another; 0 where they cross. */
export function distanceBetween(first: readonly Point2[], second: readonly Point2[]): number {
  const others = edgesOf(second).map((edge) => ({ edge, bounds: boundsOf(edge) }));
  let least = Number.POSITIVE_INFINITY;
  for (const one of edgesOf(first)) {
    const bounds = boundsOf(one);
    for (const other of others) {
      if (gapBetween(bounds, other.bounds) < least) least = Math.min(least, apart(one, other.edge));
    }
  }
  return least;
}

/** How far two stretches are apart. */
function apart(first: readonly [Point2, Point2], second: readonly [Point2, Point2]): number {
  if (cross(first, second)) return 0;
  const toSecond = first.map((point) => distanceTo(point, ...second));
  return Math.min(...toSecond, ...second.map((point) => distanceTo(point, ...first)));
}

/** Whether two stretches cross, and do not only touch. */
export function cross(first: readonly [Point2, Point2], second: readonly [Point2, Point2]): boolean {
  const parts = (line: readonly [Point2, Point2], [a, b]: readonly [Point2, Point2]): boolean =>
    offLine(line, a) * offLine(line, b) < -1e-9;
  return parts(first, second) && parts(second, first);
}

/** Whether a point lies within a polygon: a line from it to the right crosses the edges an odd number of times. */
export function contains(polygon: readonly Point2[], { x, y }: Point2): boolean {
  const crossed = edgesOf(polygon).filter(([a, b]) => a.y > y !== b.y > y && x < crossingAt(a, b, y));
  return crossed.length % 2 === 1;
}

/** Where the line through two points is as high as `y`. */
function crossingAt(a: Point2, b: Point2, y: number): number {
  return a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y);
}

/** The distance of a point from the stretch between two others. */
function distanceTo({ x, y }: Point2, a: Point2, b: Point2): number {
  const [across, up] = [b.x - a.x, b.y - a.y];
  const along = ((x - a.x) * across + (y - a.y) * up) / (across * across + up * up || 1);
  const share = Math.min(1, Math.max(0, along));
  return Math.hypot(x - a.x - across * share, y - a.y - up * share);
}

/** The part of a convex polygon where a linear function is not negative. */
function keepWhere(polygon: readonly Point2[], measure: (point: Point2) => number): readonly Point2[] {
  const kept: Point2[] = [];
  for (const [a, b] of edgesOf(polygon)) {
    const [here, there] = [measure(a), measure(b)];
    if (here >= 0) kept.push(a);
    if ((here > 0 && there < 0) || (here < 0 && there > 0)) kept.push(mixed(a, b, here / (here - there)));
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
