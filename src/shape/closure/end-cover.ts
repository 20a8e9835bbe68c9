import type { Length } from '../../measure/length.ts';
import { uncovered } from '../common-parts.ts';
import { areaOf, breadthOf, offLine, type Point2 } from '../flat-polygon.ts';
import { type FoldedShape, foldedPanelOf, foldIn } from '../folded-shape.ts';
import { cross, dot, minus, type Point3, unit } from '../space.ts';
import { type EndFlap, isFlapStuck, type TubeEnd } from './ends.ts';
import { isSquare } from './seam.ts';
import { tolerance } from './tolerance.ts';

/** A flap in the way of the walls beside its own, and by how many millimeters. */
type StickingFlap = { readonly flap: EndFlap; readonly by: number };

/** Flaps that stick out between the walls of an end; none of a square one, of which facing walls tell more. */
export function flapsSticking(shape: FoldedShape, end: TubeEnd, caliper: Length): readonly StickingFlap[] {
  if (isSquare(end.tube) || !hasRoom(end)) return [];
  const { outline, covers } = lookAt(shape, end);
  return end.flaps.flatMap((flap, index) => {
    const out = (covers[index] ?? []).flatMap((cover) => uncovered(cover, [outline], tolerance(caliper).mm));
    return out.length > 0 ? [{ flap, by: Math.max(...out.map(breadthOf)) }] : [];
  });
}

/** What flaps leave open, the longer way first, and how much longer they would have to be; in millimeters. */
type EndHole = { readonly size: readonly [number, number]; readonly lack: number };

/**
 * The hole that the flaps of an end leave. None where it is square, where any sticks out, or where flaps that aren't
 * stuck cover less than half of it: that end is meant to be open.
 */
export function holeIn(shape: FoldedShape, end: TubeEnd, caliper: Length): EndHole | undefined {
  if (isSquare(end.tube) || !hasRoom(end) || flapsSticking(shape, end, caliper).length > 0) return undefined;
  const { outline, covers, view } = lookAt(shape, end);
  const open = uncovered(outline, covers.flat(), tolerance(caliper).mm);
  const isMeant = end.flaps.some((flap) => isFlapStuck(shape.net, flap)) || coversHalf(shape, end, caliper);
  if (open.length === 0 || !isMeant) return undefined;
  return holeBetween(open.flat(), end.flaps, ({ fold }) => {
    const [from, to] = foldIn(shape, fold);
    return [view(from), view(to)];
  });
}

/** Whether flaps cover at least half of an end; else it is meant to be open. */
export function coversHalf(shape: FoldedShape, end: TubeEnd, caliper: Length): boolean {
  if (!hasRoom(end)) return false;
  const { outline, covers } = lookAt(shape, end);
  const open = uncovered(outline, covers.flat(), tolerance(caliper).mm);
  return open.reduce((sum, part) => sum + areaOf(part), 0) <= areaOf(outline) / 2;
}

/** Whether there is anything for flaps to cover: a tube of two sides lies flat. */
function hasRoom({ tube, flaps }: TubeEnd): boolean {
  return flaps.length > 0 && tube.joints.length > 2;
}

/** The rim of an end and its flaps, seen along the tube. */
function lookAt(
  shape: FoldedShape,
  end: TubeEnd,
): {
  readonly outline: readonly Point2[];
  /** Of each flap, its parts. */
  readonly covers: readonly (readonly (readonly Point2[])[])[];
  readonly view: (point: Point3) => Point2;
} {
  const rim = rimOf(shape, end);
  const view = viewAcross(rim);
  const covers = end.flaps.map(({ parts }) =>
    parts.map((part) => foldedPanelOf(shape, part).corners.map(view)),
  );
  return { outline: rim.map(view), covers, view };
}

/** The corners of an end in space, in order round it. */
function rimOf(shape: FoldedShape, { tube, end }: TubeEnd): Point3[] {
  return tube.joints.map(({ fold, parent }) => {
    const { panel, place } = foldedPanelOf(shape, parent);
    const isThere = ({ x, y }: typeof fold.from): boolean =>
      (tube.lines === 'upright' ? y : x).equals(panel.box[end]);
    return place(isThere(fold.from) ? fold.from : fold.to);
  });
}

/** Carries points of the plane of some corners onto a picture of it. */
function viewAcross([origin, next, third]: readonly Point3[]): (point: Point3) => Point2 {
  if (!origin || !next || !third) throw new Error('an end of less than three corners');
  const across = unit(minus(next, origin));
  const down = cross(unit(cross(across, minus(third, origin))), across);
  return (point) => {
    const from = minus(point, origin);
    return { x: dot(from, across), y: dot(from, down) };
  };
}

/** What lies open between corners of it. Flaps are as much too short as the nearest is from the middle. */
function holeBetween(
  corners: readonly Point2[],
  flaps: readonly EndFlap[],
  hinge: (flap: EndFlap) => readonly [Point2, Point2],
): EndHole {
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  const middle = { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
  const size = [xs, ys].map((values) => Math.max(...values) - Math.min(...values)).toSorted((a, b) => b - a);
  const lacks = flaps.map((flap) => Math.abs(offLine(hinge(flap), middle)) - flap.depth.mm);
  return { size: [size[0] ?? 0, size[1] ?? 0], lack: Math.min(...lacks) };
}
