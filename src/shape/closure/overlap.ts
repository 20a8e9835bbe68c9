import { areaOf, convexParts, type Point2, shared } from '../flat-polygon.ts';
import type { FoldedPanel } from '../fold.ts';
import { dot, height, minus, type Point3, unit } from '../space.ts';

/** How one folded panel lies over another whose plane it shares, or nearly. */
export type Overlap = {
  readonly area: number;
  /** How far the shared part reaches along the first panel's own width and height, in millimetres. */
  readonly width: number;
  readonly height: number;
};

/** A panel's own axes as it lies in space: along its box's top edge, and down its side. */
type PanelAxes = { readonly origin: Point3; readonly across: Point3; readonly down: Point3 };

const NOTHING: Overlap = { area: 0, width: 0, height: 0 };

/** What two folded panels share when looked at straight onto the first. */
export function overlapOf(first: FoldedPanel, second: FoldedPanel): Overlap {
  const axes = axesOf(first);
  if (!axes) return NOTHING;
  const parts = convexParts(first.corners.map((corner) => onAxes(axes, corner)));
  const others = convexParts(second.corners.map((corner) => onAxes(axes, corner)));
  const pieces = parts.flatMap((part) => others.map((other) => shared(part, other)));
  const points = pieces.filter((piece) => piece.length > 2).flat();
  if (points.length === 0) return NOTHING;
  return {
    area: pieces.reduce((sum, piece) => sum + areaOf(piece), 0),
    width: spread(points.map(({ x }) => x)),
    height: spread(points.map(({ y }) => y)),
  };
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

function spread(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}
