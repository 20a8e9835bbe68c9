import type { Point2 } from '../flat-polygon.ts';
import { upright } from '../fold.ts';
import type { Opening } from '../net.ts';

/** Millimeters: what a slit is taken to be wide, to see what lies over it. */
const SLIT = 1;

/** Where an opening leaves no paper, in millimeters with y up; of a slit a narrow strip. */
export function gapOf({ outline, how }: Opening): readonly Point2[] {
  const points = outline.map(upright);
  const [from, to] = points;
  if (how !== 'slit' || !from || !to) return points;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const aside = {
    x: ((to.y - from.y) * SLIT) / (2 * length),
    y: ((from.x - to.x) * SLIT) / (2 * length),
  };
  const moved = ({ x, y }: Point2, by: 1 | -1): Point2 => ({ x: x + by * aside.x, y: y + by * aside.y });
  return [moved(from, -1), moved(to, -1), moved(to, 1), moved(from, 1)];
}
