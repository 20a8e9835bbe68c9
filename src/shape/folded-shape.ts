import type { Point2 } from './flat-polygon.ts';
import type { FlatPoint, Net, Panel } from './net.ts';
import type { Plane, Point3 } from './space.ts';

/** One panel where it has come to in space. */
export type FoldedPanel = {
  readonly panel: Panel;
  /** The corners of its outline, clockwise as seen from outside. */
  readonly corners: readonly Point3[];
  /** The corners of its box, clockwise from the top left as it lay flat: tapers not taken off. */
  readonly box: readonly Point3[];
  /** Its plane; the normal points to the outside. */
  readonly plane: Plane;
  /** Carries a point of the flat net to where it has come. */
  readonly place: (point: FlatPoint) => Point3;
  /** The same for a point in millimetres from the left and the top. */
  readonly carry: (point: Point2) => Point3;
};

/** A net folded, wholly or in part, standing on a table in front of the viewer (see `space.ts` for the axes). */
export type FoldedShape = {
  /** The net that was folded: the piece's own, or its strips where it has bent panels. */
  readonly net: Net;
  /** Whether its panels are strips that stand for bent ones. */
  readonly bent: boolean;
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
