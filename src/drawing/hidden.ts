import { contains, type Point2 } from '../shape/flat-polygon.ts';
import type { PaperSheet } from '../shape/paint/paper-sheet.ts';
import { type Look, placeInPicture, towardsViewer } from '../shape/paint/picture.ts';
import { placed, posesOf } from '../shape/paint/pose.ts';
import { dot, minus, type Point3 } from '../shape/space.ts';

/** Millimeters; what lies so near a panel lies on it. */
const NEAR = 0.05;

/**
 * Tells of points in space whether a panel of a sheet, folded so far, stands between them and the viewer.
 *
 * @param shares how far each panel is turned, as `posesOf` takes them.
 */
export function isHiddenFrom(
  { panels, rest }: PaperSheet,
  shares: readonly number[],
  look: Look,
): (point: Point3) => boolean {
  const place = placeInPicture(look);
  const towards = towardsViewer(look);
  const poses = posesOf(panels, rest, shares);
  const screens = panels.map(({ outline }, index) => {
    const pose = poses[index] ?? rest;
    const corners = Array.from({ length: outline.length / 2 }, (_, at) =>
      place(placed(pose, { x: outline[2 * at] ?? 0, y: outline[2 * at + 1] ?? 0, z: 0 })),
    );
    return { corners, normal: pose.outside, origin: pose.origin };
  });
  return (point) => {
    const seenAt: Point2 = place(point);
    return screens.some(({ corners, normal, origin }) => {
      const slope = dot(normal, towards);
      if (Math.abs(slope) < 1e-6) return false;
      return dot(normal, minus(origin, point)) / slope > NEAR && contains(corners, seenAt);
    });
  };
}
