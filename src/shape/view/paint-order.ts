import { convexParts, type Point2, shared } from '../flat-polygon.ts';
import { between, type Plane, type Point3 } from '../space.ts';

/** A flat polygon as the viewer sees it: x to the right, y up, z towards the viewer. */
export type SeenFace<T> = {
  readonly of: T;
  readonly corners: readonly Point3[];
  readonly plane: Plane;
  /** Of each side, from its corner to the next: whether it is an edge of the paper, or where the face was cut in two. */
  readonly edges: readonly boolean[];
};

/** Which of two faces in one plane is nearer the viewer: positive for the second; undefined when they are not in one. */
export type InOnePlane<T> = (first: T, second: T) => number | undefined;

/** Depths closer than this, in millimetres, are the same. */
const SAME_DEPTH = 1e-6;
/** Overlaps of a picture smaller than this, in square millimetres, are touching edges. */
const TOUCHING = 1e-6;
/** Faces that hide each other in a ring are cut in two, but not without end. */
const MOST_CUTS = 16;

/**
 * Faces in the order to paint them, the farthest first. Decided pair by pair where they overlap in the picture, so
 * that long faces are as right as small ones; a ring of faces that hide one another is broken by cutting one of them.
 */
export function paintOrder<T>(
  faces: readonly SeenFace<T>[],
  inOnePlane: InOnePlane<T>,
): readonly SeenFace<T>[] {
  let waiting = faces.map((face) => new Waiting(face));
  for (const [index, first] of waiting.entries()) {
    for (const second of waiting.slice(index + 1)) relate(first, second, inOnePlane);
  }
  const painted: SeenFace<T>[] = [];
  let cuts = 0;
  while (waiting.length > 0) {
    const free = waiting.find(({ behind }) => behind.size === 0);
    if (free) {
      painted.push(free.face);
      waiting = without(waiting, free);
      continue;
    }
    const halves = cuts < MOST_CUTS ? cutRing(waiting) : undefined;
    if (halves) {
      cuts += 1;
      waiting = without(waiting, halves.whole);
      const parts = halves.parts.map((face) => new Waiting(face));
      for (const part of parts) for (const other of waiting) relate(part, other, inOnePlane);
      waiting.push(...parts);
    } else {
      const farthest = waiting.reduce((far, each) => (depthOf(each.face) < depthOf(far.face) ? each : far));
      farthest.behind.clear();
    }
  }
  return painted;
}

/** A face not yet painted, and those that must be painted before it. */
class Waiting<T> {
  readonly face: SeenFace<T>;
  readonly behind: Set<Waiting<T>> = new Set<Waiting<T>>();
  readonly parts: readonly (readonly Point3[])[];

  constructor(face: SeenFace<T>) {
    this.face = face;
    this.parts = convexParts(face.corners);
  }
}

function without<T>(waiting: readonly Waiting<T>[], gone: Waiting<T>): Waiting<T>[] {
  for (const other of waiting) other.behind.delete(gone);
  return waiting.filter((each) => each !== gone);
}

function relate<T>(first: Waiting<T>, second: Waiting<T>, inOnePlane: InOnePlane<T>): void {
  const order = compareDepth(first, second, inOnePlane);
  if (order > 0) second.behind.add(first);
  if (order < 0) first.behind.add(second);
}

/** Positive when the second is nearer the viewer where the two overlap; 0 when they don't. */
function compareDepth<T>(first: Waiting<T>, second: Waiting<T>, inOnePlane: InOnePlane<T>): number {
  if (!boxesMeet(first.face.corners, second.face.corners)) return 0;
  const overlaps = first.parts.flatMap((part) =>
    second.parts.map((other) => shared(part, other)).filter((polygon) => isSpread(polygon)),
  );
  if (overlaps.length === 0) return 0;
  const together = inOnePlane(first.face.of, second.face.of);
  if (together !== undefined) return together;
  let greatest = 0;
  for (const point of overlaps.flat()) {
    const difference = depthAt(second.face.plane, point) - depthAt(first.face.plane, point);
    if (Math.abs(difference) > Math.abs(greatest)) greatest = difference;
  }
  return Math.abs(greatest) > SAME_DEPTH ? greatest : 0;
}

function isSpread(polygon: readonly Point2[]): boolean {
  if (polygon.length < 3) return false;
  const [xs, ys] = [polygon.map(({ x }) => x), polygon.map(({ y }) => y)];
  const width = Math.max(...xs) - Math.min(...xs);
  const height = Math.max(...ys) - Math.min(...ys);
  let double = 0;
  for (const [index, a] of polygon.entries()) {
    const b = polygon[(index + 1) % polygon.length] ?? a;
    double += a.x * b.y - b.x * a.y;
  }
  return Math.abs(double) > TOUCHING + 1e-6 * (width + height);
}

function boxesMeet(first: readonly Point3[], second: readonly Point3[]): boolean {
  const meet = (pick: (point: Point3) => number): boolean => {
    const [a, b] = [first.map(pick), second.map(pick)];
    return Math.max(...a) > Math.min(...b) && Math.max(...b) > Math.min(...a);
  };
  return meet(({ x }) => x) && meet(({ y }) => y);
}

function depthAt({ normal, offset }: Plane, { x, y }: Point2): number {
  return (offset - normal.x * x - normal.y * y) / normal.z;
}

function depthOf({ corners }: SeenFace<unknown>): number {
  return corners.reduce((sum, { z }) => sum + z, 0) / corners.length;
}

/** Cuts one face of a ring along the plane of another it waits for. */
function cutRing<T>(
  waiting: readonly Waiting<T>[],
): { readonly whole: Waiting<T>; readonly parts: readonly SeenFace<T>[] } | undefined {
  for (const whole of waiting) {
    for (const { face } of whole.behind) {
      const parts = cutByPlane(whole.face, face.plane);
      if (parts.length === 2) return { whole, parts };
    }
  }
  return undefined;
}

/** The parts of a convex face on either side of a plane; one part when it lies on one side, or is not convex. */
function cutByPlane<T>(face: SeenFace<T>, plane: Plane): readonly SeenFace<T>[] {
  const heights = face.corners.map(({ x, y, z }) => {
    const { normal, offset } = plane;
    return normal.x * x + normal.y * y + normal.z * z - offset;
  });
  const clear = 1e-3;
  const straddles = Math.max(...heights) > clear && Math.min(...heights) < -clear;
  if (!straddles || convexParts(face.corners).length > 1) return [face];
  return [1, -1].map((side) =>
    half(
      face,
      heights.map((height) => height * side),
    ),
  );
}

function half<T>(face: SeenFace<T>, heights: readonly number[]): SeenFace<T> {
  const corners: Point3[] = [];
  const edges: boolean[] = [];
  for (const [index, corner] of face.corners.entries()) {
    const next = face.corners[(index + 1) % face.corners.length] ?? corner;
    const [here = 0, there = 0] = [heights[index], heights[(index + 1) % heights.length]];
    const isEdge = face.edges[index] ?? true;
    if (here >= 0) {
      corners.push(corner);
      edges.push(isEdge);
    }
    if (here * there < 0) {
      corners.push(between(corner, next, here / (here - there)));
      // Leaving the kept half, the cut begins; entering it, the old edge goes on.
      edges.push(here < 0 && isEdge);
    }
  }
  return { ...face, corners, edges };
}
