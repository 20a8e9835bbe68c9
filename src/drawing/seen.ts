import { contains, type Point2 } from '../shape/flat-polygon.ts';
import type { PaintedFace } from '../shape/paint/picture.ts';
import { extentOf, type Label } from './lettering.ts';
import { boxOf } from './region.ts';

type Faces = readonly PaintedFace[];

/** The face on top at a point of a picture. */
function faceAt(faces: Faces, point: Point2): PaintedFace | undefined {
  return faces.findLast(({ points }) => contains(points, point));
}

const COARSE = 26;

/**
 * How much is seen of some panels, and twice that of the areas on any panel that take glue, the more the higher up they
 * are, where hands reach; for comparing pictures of one shape.
 */
export function seenOf(faces: Faces, panels: ReadonlySet<number>): number {
  const { left, top, right, bottom } = boxOf(faces.flatMap(({ points }) => points));
  const [across, down] = [(right - left) / COARSE, (bottom - top) / COARSE];
  let seen = 0;
  for (let row = 0.5; row < COARSE; row++) {
    for (let column = 0.5; column < COARSE; column++) {
      const face = faceAt(faces, { x: left + column * across, y: top + row * down });
      const worth = face === undefined ? 0 : face.level !== 0 ? 2 : panels.has(face.panel) ? 1 : 0;
      seen += worth * (1.5 - row / COARSE);
    }
  }
  return seen * across * down;
}

/** Where a panel's name belongs, and whether all of it finds room there. */
type NameOnFace = { readonly at: Point2; readonly hasRoom: boolean; readonly isOnGlue: boolean };

/** Millimeters between the points tried. */
const FINE = 1.5;

/**
 * The spot nearest to the middle of what is seen of a panel at which a label fits beside some points, else that middle;
 * undefined where nothing is seen.
 */
export function spotForLabel(
  faces: Faces,
  panel: number,
  {
    label,
    size,
    beside,
  }: { readonly label: Label; readonly size: number; readonly beside: readonly Point2[] },
): NameOnFace | undefined {
  const own = faces.filter((face) => face.panel === panel).flatMap(({ points }) => points);
  if (own.length === 0) return undefined;
  const { left, top, right, bottom } = boxOf(own);
  const seen: Point2[] = [];
  for (let y = top + FINE / 2; y < bottom; y += FINE) {
    for (let x = left + FINE / 2; x < right; x += FINE)
      if (faceAt(faces, { x, y })?.panel === panel) seen.push({ x, y });
  }
  if (seen.length === 0) return undefined;
  const middle = {
    x: seen.reduce((sum, { x }) => sum + x, 0) / seen.length,
    y: seen.reduce((sum, { y }) => sum + y, 0) / seen.length,
  };
  const far = (point: Point2): number => Math.hypot(point.x - middle.x, point.y - middle.y);
  const nearest = seen.toSorted((a, b) => far(a) - far(b));
  const extent = extentOf(label);
  const [width, height] = [extent.width * size + 1, extent.height * size + 1];
  const isBeside = ({ x, y }: Point2): boolean =>
    !beside.some((point) => Math.abs(point.x - x) < width / 2 && Math.abs(point.y - y) < height / 2);
  const found = nearest.find((at) => isBeside(at) && hasRoom(faces, panel, at, width, height));
  const at = found ?? nearest[0] ?? middle;
  return { at, hasRoom: found !== undefined, isOnGlue: faceAt(faces, at)?.level !== 0 };
}

function hasRoom(faces: Faces, panel: number, { x, y }: Point2, width: number, height: number): boolean {
  return [-0.5, -0.25, 0, 0.25, 0.5].every((across) =>
    [-0.5, 0, 0.5].every(
      (down) => faceAt(faces, { x: x + width * across, y: y + height * down })?.panel === panel,
    ),
  );
}
