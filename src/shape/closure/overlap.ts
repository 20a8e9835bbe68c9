import { areaOf, convexParts, extentOf, type Overlap, type Point2, shared } from '../flat-polygon.ts';
import type { FoldedPanel } from '../fold.ts';
import { dot, height, minus, type Point3, plus, scaled, unit } from '../space.ts';

/** A panel's own axes as it lies in space: along its box's top edge, and down its side. */
export type PanelAxes = { readonly origin: Point3; readonly across: Point3; readonly down: Point3 };

/** What two folded panels share when looked at straight onto the first, along whose own width and height it reaches. */
export function overlapOf(first: FoldedPanel, second: FoldedPanel): Overlap {
  return extentOf(overlapParts(first, second));
}

/** The same as convex parts on the first panel's axes. */
export function overlapParts(first: FoldedPanel, second: FoldedPanel): readonly (readonly Point2[])[] {
  const others = partsOn(first, second);
  return partsOn(first, first)
    .flatMap((part) => others.map((other) => shared(part, other)))
    .filter((part) => areaOf(part) > 1e-6);
}

/**
 * A folded panel as convex parts on the axes of another: from the top left of that one's box as it lay flat, in
 * millimetres, x to the right and y down.
 */
export function partsOn(panel: FoldedPanel, other: FoldedPanel): readonly (readonly Point2[])[] {
  const axes = axesOf(panel);
  return axes ? convexParts(other.corners.map((corner) => onAxes(axes, corner))) : [];
}

export function axesOf({ box }: FoldedPanel): PanelAxes | undefined {
  const [topLeft, topRight, , bottomLeft] = box;
  if (!topLeft || !topRight || !bottomLeft) return undefined;
  return { origin: topLeft, across: unit(minus(topRight, topLeft)), down: unit(minus(bottomLeft, topLeft)) };
}

export function onAxes({ origin, across, down }: PanelAxes, point: Point3): Point2 {
  const from = minus(point, origin);
  return { x: dot(from, across), y: dot(from, down) };
}

/** Where a point given on a panel's axes lies in space. */
export function offAxes({ origin, across, down }: PanelAxes, { x, y }: Point2): Point3 {
  return plus(origin, plus(scaled(across, x), scaled(down, y)));
}

/** Whether two panels' planes run alike, whichever way their outsides face. */
export function runAlike(first: FoldedPanel, second: FoldedPanel): boolean {
  return Math.abs(dot(first.plane.normal, second.plane.normal)) > PARALLEL;
}

/** The greatest distance of a panel's corners from another's plane. */
export function apart(first: FoldedPanel, second: FoldedPanel): number {
  return Math.max(...first.corners.map((corner) => Math.abs(height(second.plane, corner))));
}

/** Cosine of one degree. */
const PARALLEL: number = Math.cos(Math.PI / 180);
