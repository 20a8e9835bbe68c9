import type { Point2 } from '../flat-polygon.ts';
import { dot, type Point3, unit } from '../space.ts';
import { farthestFirst, type PlaneFace, type PlaneTree } from './plane-tree.ts';

/** How a shape is seen, in degrees: turned about the upright (its right side comes forward), tilted to show its top. */
export type Look = { readonly turn: number; readonly tilt: number };

/** Seen a little from the right and from above. */
export const USUAL_LOOK: Look = { turn: -32, tilt: 24 };

/** One polygon of a picture; paint them in order. */
export type PaintedFace = Pick<PlaneFace, 'panel' | 'level' | 'sides'> & {
  /** In millimeters, x to the right and y down. */
  readonly points: readonly Point2[];
  /** Of the side of the paper that is seen, in full light. */
  readonly color: string;
  /** From 0 (in the dark) to 1 (in full light). */
  readonly shade: number;
};

/** From above, a little from the left, before the shape. */
const LIGHT: Point3 = unit({ x: -0.35, y: 0.85, z: 0.55 });

/** What is seen of a shape in parallel projection, in the order to paint it so that what lies behind is hidden. */
export function paint(tree: PlaneTree | undefined, look: Look): readonly PaintedFace[] {
  const { right, up, towards } = sightOf(look);
  const place = placeInPicture(look);
  return farthestFirst(tree, towards).map(({ corners, normal, sides, panel, level, outside, inside }) => {
    const seen = { x: dot(right, normal), y: dot(up, normal), z: dot(towards, normal) };
    const shade = 0.55 + 0.5 * dot(seen, LIGHT) * Math.sign(seen.z);
    return {
      points: corners.map(place),
      sides,
      panel,
      level,
      color: seen.z > 0 ? outside : inside,
      shade: Math.min(1, Math.max(0, shade)),
    };
  });
}

/** Where points in space come to in the picture, as `paint` has them. */
export function placeInPicture(look: Look): (point: Point3) => Point2 {
  const { right, up } = sightOf(look);
  return (point) => ({ x: dot(right, point), y: -dot(up, point) });
}

/** The way from a shape to the viewer, 1 long. */
export function towardsViewer(look: Look): Point3 {
  return sightOf(look).towards;
}

/** The picture's right and up, and the way to the viewer. */
function sightOf({ turn, tilt }: Look): Readonly<Record<'right' | 'up' | 'towards', Point3>> {
  const [turnCos, turnSin] = cosAndSin(turn);
  const [tiltCos, tiltSin] = cosAndSin(tilt);
  return {
    right: { x: turnCos, y: 0, z: turnSin },
    up: { x: turnSin * tiltSin, y: tiltCos, z: -turnCos * tiltSin },
    towards: { x: -turnSin * tiltCos, y: tiltSin, z: turnCos * tiltCos },
  };
}

function cosAndSin(degrees: number): readonly [number, number] {
  const radians = (degrees * Math.PI) / 180;
  return [Math.cos(radians), Math.sin(radians)];
}
