import { Length } from '../measure/length.ts';
import { isUpright } from '../project/net-as-written.ts';
import type { Point2 } from './flat-polygon.ts';
import { upright } from './fold.ts';
import type { EdgeRow } from './net.ts';

/**
 * The strip of paper along an edge that a row of motifs cuts into, on its sheet, in millimeters with y up; what of it is
 * `off` both ends of the edge.
 */
export function stripOf(row: EdgeRow, off: Length = Length.zero): readonly Point2[] {
  const { side, box, length, ends, depth } = row;
  const [before, after] = ends.map((end) => Length.max(end, off));
  const isFar = side === 'right' || side === 'bottom';
  const [near, far] = [box[side], isFar ? box[side].minus(depth) : box[side].plus(depth)];
  const origin = isUpright(side) ? box.top : box.left;
  const first = origin.plus(before ?? Length.zero);
  const last = origin.plus(length).minus(after ?? Length.zero);
  const at = (along: Length, across: Length): Point2 =>
    upright(isUpright(side) ? { x: across, y: along } : { x: along, y: across });
  return [at(first, near), at(last, near), at(last, far), at(first, far)];
}
