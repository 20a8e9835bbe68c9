import type { Point2 } from '../shape/flat-polygon.ts';
import type { CutPath } from './sheet-paths.ts';

/** Millimeters that are cut, and the paper left between two cuts: a line that folds well and holds. Common practice, no source. */
const CUT = 3;
const BRIDGE = 2;

/** A score line as short cuts, with half a bridge of paper at either end; a line shorter than a cut and a bridge is one cut. */
export function perforated({ points }: CutPath): readonly CutPath[] {
  return points.slice(1).flatMap((to, index) => alongStretch(points[index] ?? to, to));
}

function alongStretch(from: Point2, to: Point2): readonly CutPath[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const count = Math.max(1, Math.round(length / (CUT + BRIDGE)));
  const pitch = length / count;
  const bridge = pitch * (BRIDGE / (CUT + BRIDGE));
  const at = (distance: number): Point2 => ({
    x: from.x + ((to.x - from.x) * distance) / length,
    y: from.y + ((to.y - from.y) * distance) / length,
  });
  return Array.from({ length: count }, (_, index) => ({
    points: [at(index * pitch + bridge / 2), at((index + 1) * pitch - bridge / 2)],
    closed: false,
  }));
}
