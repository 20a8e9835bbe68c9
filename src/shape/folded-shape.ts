import type { Point2 } from './flat-polygon.ts';
import type { FlatPoint, Fold, Net, Panel } from './net.ts';
import { dot, height, type Line3, minus, type Plane, type Point3, plus, scaled } from './space.ts';

/** One panel where it has come to in space. */
export type FoldedPanel = {
  readonly panel: Panel;
  /** The corners of its outline, clockwise as seen from outside. */
  readonly corners: readonly Point3[];
  /** The corners of its box, clockwise from the top left as it lay flat: tapers not taken off. */
  readonly box: readonly Point3[];
  /** Its plane; the normal points to the outside. */
  readonly plane: Plane;
  /** Its own axes: from the top left of its box, along the top edge and down the side. */
  readonly axes: { readonly origin: Point3; readonly across: Point3; readonly down: Point3 };
  /** Carries a point of the flat net to where it has come. */
  readonly place: (point: FlatPoint) => Point3;
};

/** A net folded, wholly or in part, standing on a table in front of the viewer (see `space.ts` for the axes). */
export type FoldedShape = {
  /** The net that was folded: the piece's own, or its strips where it has bent panels. */
  readonly net: Net;
  readonly base: string;
  readonly caliper: number;
  readonly panels: ReadonlyMap<string, FoldedPanel>;
};

/** The folded panel with this id. @throws Error when there is none. */
export function foldedPanelOf(shape: FoldedShape, id: string): FoldedPanel {
  const panel = shape.panels.get(id);
  if (!panel) throw new Error(`the folded shape has no panel "${id}"`);
  return panel;
}

/** Where a fold has come to, as its first panel has it. */
export function foldIn(shape: FoldedShape, { panels: [panel], from, to }: Fold): Line3 {
  const { place } = foldedPanelOf(shape, panel);
  return [place(from), place(to)];
}

/** A point in space on a panel's own axes, in millimeters: x to the right and y down, as it lay flat. */
export function onPanel({ axes: { origin, across, down } }: FoldedPanel, point: Point3): Point2 {
  const from = minus(point, origin);
  return { x: dot(from, across), y: dot(from, down) };
}

/** Where a point given on a panel's own axes lies in space. */
export function offPanel({ axes: { origin, across, down } }: FoldedPanel, { x, y }: Point2): Point3 {
  return plus(origin, plus(scaled(across, x), scaled(down, y)));
}

/** The outline of a panel, looked at straight onto another, on that one's own axes. */
export function outlineOn(panel: FoldedPanel, other: FoldedPanel): readonly Point2[] {
  return other.corners.map((corner) => onPanel(panel, corner));
}

/** Whether two panels lie in one plane, no further apart than allowed, whichever way their outsides face. */
export function lieAlike(first: FoldedPanel, second: FoldedPanel, allowed: number): boolean {
  return runAlike(first, second) && apart(first, second) <= allowed;
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
