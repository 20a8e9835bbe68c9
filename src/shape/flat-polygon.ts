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
export function signedDouble(polygon: readonly Point2[]): number {
  let sum = 0;
  // Asked of every part of every two panels that may meet: nothing is made to answer it.
  for (let index = 0; index < polygon.length; index += 1) {
    const [a, b] = [polygon[index], polygon[index + 1] ?? polygon[0]];
    if (a && b) sum += a.x * b.y - b.x * a.y;
  }
  return sum;
}

export function areaOf(polygon: readonly Point2[]): number {
  return Math.abs(signedArea(polygon));
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

/** How far points reach across and up, in millimeters. */
export type Bounds = {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
};

export function boundsOf(points: readonly Point2[]): Bounds {
  let [left, right] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  let [bottom, top] = [left, right];
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  }
  return { left, right, bottom, top };
}

/** What two polygons are apart at the least, across or up, by their bounds: the quick look before the long one. */
export function gapBetween(one: Bounds, other: Bounds): number {
  const across = Math.max(one.left, other.left) - Math.min(one.right, other.right);
  const up = Math.max(one.bottom, other.bottom) - Math.min(one.top, other.top);
  return Math.max(0, across, up);
}

/** How far a point lies outside a polygon; 0 within it and on its edges. */
export function distanceOutside(point: Point2, polygon: readonly Point2[]): number {
  return contains(polygon, point) ? 0 : distanceToEdges(point, polygon);
}

/** How far a point lies from the nearest edge of a polygon. */
export function distanceToEdges(point: Point2, polygon: readonly Point2[]): number {
  let least = Number.POSITIVE_INFINITY;
  let a = polygon.at(-1);
  for (const b of polygon) {
    if (a) least = Math.min(least, distanceTo(point, a, b));
    a = b;
  }
  return least;
}

/** How far a point within a polygon lies from its edges; 0 outside and on them. */
export function depthInside(point: Point2, polygon: readonly Point2[]): number {
  return contains(polygon, point) ? distanceToEdges(point, polygon) : 0;
}

/** The corners of a polygon at which it turns inward. */
export function notchesOf<P extends Point2>(polygon: readonly P[]): readonly P[] {
  const turn = Math.sign(signedDouble(polygon));
  return polygon.filter((point, index) => {
    const [before, after] = [polygon.at(index - 1) ?? point, polygon[(index + 1) % polygon.length] ?? point];
    return signedDouble([before, point, after]) * turn < -1e-9;
  });
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
  let isInside = false;
  let a = polygon.at(-1);
  // Asked of thousands of points: nothing is made to answer it.
  for (const b of polygon) {
    if (a && a.y > y !== b.y > y && x < crossingAt(a, b, y)) isInside = !isInside;
    a = b;
  }
  return isInside;
}

/** Where the line through two points is as high as `y`. */
function crossingAt(a: Point2, b: Point2, y: number): number {
  return a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y);
}

/** The distance of a point from the stretch between two others. */
export function distanceTo({ x, y }: Point2, a: Point2, b: Point2): number {
  const across = b.x - a.x;
  const up = b.y - a.y;
  const along = ((x - a.x) * across + (y - a.y) * up) / (across * across + up * up || 1);
  const share = Math.min(1, Math.max(0, along));
  const beside = x - a.x - across * share;
  const above = y - a.y - up * share;
  // Asked of millions of points, which Math.hypot takes several times as long for.
  return Math.sqrt(beside * beside + above * above);
}
