/** A point or a direction in space, in millimeters: x to the right, y up, z towards the viewer. */
export type Point3 = { readonly x: number; readonly y: number; readonly z: number };

/** All points at `normal · point = offset`; the normal has length 1. */
export type Plane = { readonly normal: Point3; readonly offset: number };

/** A straight stretch, from one end to the other. */
export type Line3 = readonly [Point3, Point3];

export function minus(a: Point3, b: Point3): Point3 {
  return { x: a.x - b.x, y: a.y - b.y, z: a.z - b.z };
}

export function plus(a: Point3, b: Point3): Point3 {
  return { x: a.x + b.x, y: a.y + b.y, z: a.z + b.z };
}

export function scaled(a: Point3, factor: number): Point3 {
  return { x: a.x * factor, y: a.y * factor, z: a.z * factor };
}

export function dot(a: Point3, b: Point3): number {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

export function cross(a: Point3, b: Point3): Point3 {
  return { x: a.y * b.z - a.z * b.y, y: a.z * b.x - a.x * b.z, z: a.x * b.y - a.y * b.x };
}

export function length(a: Point3): number {
  return Math.sqrt(dot(a, a));
}

export function distance(a: Point3, b: Point3): number {
  return length(minus(a, b));
}

/** The direction of `a`, with length 1; `a` must not be zero. */
export function unit(a: Point3): Point3 {
  return scaled(a, 1 / length(a));
}

/** The point a share of the way from `a` to `b`. */
export function between(a: Point3, b: Point3, share: number): Point3 {
  return plus(a, scaled(minus(b, a), share));
}

/** How far a point lies from the line through two others. */
export function distanceFromLine([from, to]: Line3, point: Point3): number {
  const way = minus(to, from);
  return length(cross(minus(point, from), way)) / length(way);
}

/** How far a point lies on the normal's side of a plane. */
export function height({ normal, offset }: Plane, point: Point3): number {
  return dot(normal, point) - offset;
}

/** The least box round some points, upright in space. */
export function bounds(points: readonly Point3[]): { readonly least: Point3; readonly most: Point3 } {
  const along = (pick: (point: Point3) => number): [number, number] => {
    const values = points.map(pick);
    return [Math.min(...values), Math.max(...values)];
  };
  const [x, y, z] = [along((p) => p.x), along((p) => p.y), along((p) => p.z)];
  return { least: { x: x[0], y: y[0], z: z[0] }, most: { x: x[1], y: y[1], z: z[1] } };
}
