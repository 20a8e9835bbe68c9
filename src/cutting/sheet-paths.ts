import { cutLines, type DrawingFrame, placeAll, placeSegment } from '../drawing/outline.ts';
import { runningOn, type Segment, without } from '../drawing/region.ts';
import { edgesOf, type Point2 } from '../shape/flat-polygon.ts';
import type { Net } from '../shape/net.ts';
import { unionOutlines } from '../shape/union-outline.ts';

/** A line in millimeters; a closed one leads from its last point back to its first. */
export type CutPath = { readonly points: readonly Point2[]; readonly closed: boolean };

/** What a machine does to one sheet of a piece, in millimeters from the sheet's top left corner, outside up. */
type SheetPaths = { readonly cuts: readonly CutPath[]; readonly scores: readonly CutPath[] };

const FULL_SIZE: DrawingFrame = { scale: 1, left: 0, top: 0 };

/** A net as paths: openings first, then slits, the outline last, so that the paper holds still until the end. */
export function pathsOf(net: Net): SheetPaths {
  const outlines = unionOutlines(net.panels.map(({ outline }) => outline)).map((points) =>
    placeAll(points, FULL_SIZE),
  );
  const openings = (net.openings ?? []).map(({ outline, how }) => ({
    points: placeAll(outline, FULL_SIZE),
    closed: how !== 'slit',
  }));
  const scores = runningOn(net.folds.map((fold) => placeSegment(fold, FULL_SIZE))).map(straightened);
  return {
    cuts: [
      ...openings,
      ...slitsWithin(net, outlines),
      ...outlines.map((points) => ({ points, closed: true })),
    ],
    scores: scores.map((points) => ({ points, closed: false })),
  };
}

/** The cuts that are no part of an outline. */
function slitsWithin(net: Net, outlines: readonly (readonly Point2[])[]): readonly CutPath[] {
  const edges = outlines.flatMap((outline) => edgesOf(outline));
  const { openings: _, ...closed } = net;
  const slits = cutLines(closed, FULL_SIZE)
    .flatMap(stretchesOf)
    .flatMap((slit) => without(slit, edges));
  return runningOn(slits).map((points) => ({ points, closed: false }));
}

/** A line without the points at which it runs straight on, so that a tool is set down once. */
function straightened(line: readonly Point2[]): readonly Point2[] {
  return line.filter((point, index) => {
    const [before, after] = [line[index - 1], line[index + 1]];
    return !before || !after || Math.abs(crossOf(before, point, after)) > 1e-6;
  });
}

/** Twice the area between three points, in square millimeters. */
function crossOf(a: Point2, b: Point2, c: Point2): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

function stretchesOf(line: readonly Point2[]): readonly Segment[] {
  return line.slice(1).map((to, index) => [line[index] ?? to, to]);
}
