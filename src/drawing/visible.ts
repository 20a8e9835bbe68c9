import { contains, distanceTo, edgesOf, type Point2 } from '../shape/flat-polygon.ts';
import { boxOf, type Segment } from './region.ts';

/** A point, and how far it is from every edge near it. */
export type LabelSpot = { readonly at: Point2; readonly clearance: number };

const STEPS = 30;

/**
 * The point of an outline that is farthest from its own edges, from what covers it and from the lines across it: where
 * a letter belongs. Undefined when all of it is covered. By trial on a grid: to a thirtieth of its size, which is plenty for a letter.
 */
export function roomiestSpot(
  outline: readonly Point2[],
  covers: readonly (readonly Point2[])[],
  lines: readonly Segment[],
): LabelSpot | undefined {
  const edges = [...[outline, ...covers].flatMap(edgesOf), ...lines];
  const { left, top, right, bottom } = boxOf(outline);
  let best: LabelSpot | undefined;
  for (let row = 0; row < STEPS; row++) {
    for (let column = 0; column < STEPS; column++) {
      const at = {
        x: left + ((right - left) * (column + 0.5)) / STEPS,
        y: top + ((bottom - top) * (row + 0.5)) / STEPS,
      };
      // A hair of preference for the top left, so that equal spots are always the same one.
      const clearance = clearanceOver(best ? best.clearance + 1e-6 : 0, at, edges);
      if (clearance === undefined || !contains(outline, at)) continue;
      if (!covers.some((cover) => contains(cover, at))) best = { at, clearance };
    }
  }
  return best;
}

/**
 * How far a point is from the nearest edge, if that is farther than `least`. The edge that is too near comes first for the
 * next point, which it is as near to.
 */
function clearanceOver(least: number, at: Point2, edges: Segment[]): number | undefined {
  let nearest = Number.POSITIVE_INFINITY;
  const tooNear = edges.findIndex(([from, to]) => {
    nearest = Math.min(nearest, distanceTo(at, from, to));
    return nearest <= least;
  });
  if (tooNear < 0) return nearest;
  edges.unshift(...edges.splice(tooNear, 1));
  return undefined;
}
