import { Length } from '../../measure/length.ts';
import type { Size } from '../../measure/size.ts';
import type { FlatPoint } from '../net.ts';
import { boxCorners } from '../outline.ts';

/**
 * What falls away of a sheet when an outline is cut from it: a part between any two points in which the outline, which
 * runs clockwise, meets the sheet's edges. It meets them in two points at least.
 */
export function wasteRound(points: readonly FlatPoint[], { width, height }: Size): FlatPoint[][] {
  const box = { left: Length.zero, top: Length.zero, right: width, bottom: height };
  const along = (point: FlatPoint): Length | undefined => distanceRound(point, { width, height });
  const start = points.findIndex((point) => along(point) !== undefined);
  const walked = [...points.slice(start), ...points.slice(0, start + 1)];
  const waste: FlatPoint[][] = [];
  let stretch: FlatPoint[] = [];
  for (const point of walked) {
    stretch.push(point);
    const [from, to] = [stretch[0] && along(stretch[0]), along(point)];
    if (from === undefined || to === undefined || stretch.length < 2) continue;
    const passed = cornersBetween(from, to, { width, height }).map((index) => boxCorners(box)[index]);
    const corners = passed.filter((corner) => corner !== undefined);
    if (stretch.length + corners.length > 2) waste.push([...corners, ...stretch.toReversed()]);
    stretch = [point];
  }
  return waste;
}

/** How far along a sheet's edges a point on them lies, clockwise from its top left; undefined of one within. */
function distanceRound({ x, y }: FlatPoint, { width, height }: Size): Length | undefined {
  if (y.sign === 0) return x;
  if (x.equals(width)) return width.plus(y);
  if (y.equals(height)) return width.plus(height).plus(width).minus(x);
  if (x.sign === 0) return width.plus(height).times(2).minus(y);
  return undefined;
}

/** The corners of a sheet, clockwise from its top left, that are passed on the way along its edges. */
function cornersBetween(from: Length, to: Length, { width, height }: Size): number[] {
  const round = width.plus(height).times(2);
  const end = to.greaterThan(from) ? to : to.plus(round);
  const once = [Length.zero, width, width.plus(height), width.plus(height).plus(width)];
  const corners = [...once, ...once.map((corner) => corner.plus(round))];
  return corners.flatMap((corner, index) =>
    corner.greaterThan(from) && end.greaterThan(corner) ? [index % once.length] : [],
  );
}
