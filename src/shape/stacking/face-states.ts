import type { Face } from '../../project/ref.ts';
import { partsOn } from '../closure/overlap.ts';
import { extentOf, without } from '../common-parts.ts';
import { areaOf, contains, type Point2 } from '../flat-polygon.ts';
import { type FoldedPanel, foldedPanelOf, offPanel, onPanel, outlineOn } from '../folded-shape.ts';
import type { FlatPoint, Net } from '../net.ts';
import { perNet } from '../per-net.ts';
import { cross, dot, type Point3, plus, scaled, unit } from '../space.ts';
import { stackOf } from './folding.ts';
import { faceOn, flatAreas } from './glue-areas.ts';
import { meetingOf } from './meeting.ts';
import { type Stack, TOUCHING } from './stack.ts';

/** What has become of one face of a panel, once everything is folded. */
export type FaceState = {
  /** Whether some of it is seen from anywhere outside, without opening anything. */
  readonly isSeen: boolean;
  /** The panels that lie right on it. */
  readonly covers: readonly Cover[];
};

/** A panel that lies on a face. */
export type Cover = {
  readonly panel: string;
  readonly isGlued: boolean;
  /** Where, on the flat net of the panel that is covered; outlines that share no more than edges. */
  readonly areas: readonly (readonly FlatPoint[])[];
};

/**
 * Both faces of every panel, by its id. `caliper` is the paper's thickness in millimeters. A net with bent walls lies
 * as it is glued, flat.
 */
export const faceStates: (
  net: Net,
  caliper: number,
) => ReadonlyMap<string, Readonly<Record<Face, FaceState>>> = perNet((net, caliper: number) => {
  const stack = stackOf(net, caliper);
  return new Map(
    stack.shape.net.panels.map(({ id }) => [
      id,
      { outside: faceState(stack, id, 'outside'), inside: faceState(stack, id, 'inside') },
    ]),
  );
});

/** One face alone, where the others are no matter. */
export function faceStateOf(net: Net, caliper: number, panel: string, face: Face): FaceState {
  return faceState(stackOf(net, caliper), panel, face);
}

function faceState(stack: Stack, panel: string, face: Face): FaceState {
  const { shape, sides } = stack;
  const lying = sides.on(panel).filter((id) => faceOn(sides.of(panel, id) ?? 1) === face);
  const covers = lying.flatMap((id): Cover[] => {
    const { parts, free } = meetingOf(stack, panel, id);
    if (free.area < TOUCHING) return [];
    const isGlued = shape.net.glue.some(
      ({ from, to }) => (from === panel && to === id) || (from === id && to === panel),
    );
    return [{ panel: id, isGlued, areas: flatAreas(stack, panel, panel, parts) }];
  });
  return { isSeen: isSeen(stack, panel, face, lying), covers };
}

/** Of the rays from what isn't covered, this share must get out. */
const SEEN = 1 / 20;
/** Square millimeters that nobody sees. */
const SLIVER = 10;
/** The parts of a face that are looked at, the largest first. */
const LOOKED_AT = 6;

function isSeen({ shape }: Stack, id: string, face: Face, lying: readonly string[]): boolean {
  const panel = foldedPanelOf(shape, id);
  const holes = lying.flatMap((other) => partsOn(panel, foldedPanelOf(shape, other)));
  const bare = without(partsOn(panel, panel), holes);
  if (extentOf(bare).area < SLIVER) return false;
  const largest = bare.toSorted((a, b) => areaOf(b) - areaOf(a)).slice(0, LOOKED_AT);
  const points = largest.flatMap(spotsIn).map((spot) => offPanel(panel, spot));
  const rays = raysFrom(panel, face);
  const others = [...shape.panels.values()]
    .filter((other) => other !== panel)
    .map((other) => ({ panel: other, outline: outlineOn(other, other) }));
  let needed = SEEN * points.length * rays.length;
  for (const point of points) {
    for (const ray of rays) {
      if (!others.some((other) => isHit(other, point, ray))) needed -= 1;
      if (needed <= 0) return true;
    }
  }
  return false;
}

/** The middle of a convex part, and spots halfway to its corners. */
function spotsIn(part: readonly Point2[]): Point2[] {
  const middle = {
    x: part.reduce((sum, { x }) => sum + x, 0) / part.length,
    y: part.reduce((sum, { y }) => sum + y, 0) / part.length,
  };
  return [middle, ...part.map(({ x, y }) => ({ x: (x + middle.x) / 2, y: (y + middle.y) / 2 }))];
}

/** Straight up from a face, and at slants all round that run along no edge. */
function raysFrom({ plane: { normal } }: FoldedPanel, face: Face): Point3[] {
  const up = face === 'outside' ? normal : scaled(normal, -1);
  const other = Math.abs(up.x) < 0.6 ? { x: 1, y: 0, z: 0 } : { x: 0, y: 1, z: 0 };
  const across = unit(cross(up, other));
  const along = cross(up, across);
  const slants = [0.5, 1.5, 4].flatMap((slant) =>
    [0.3, 1.4, 2.3, 3.5, 4.4, 5.6].map((turn) => {
      const way = plus(scaled(across, Math.cos(turn)), scaled(along, Math.sin(turn)));
      return unit(plus(up, scaled(way, slant)));
    }),
  );
  return [up, ...slants];
}

/** A panel a ray may meet, with its corners on its own axes. */
type BlockingFace = { readonly panel: FoldedPanel; readonly outline: readonly Point2[] };

/** Whether a ray meets a panel some way off. */
function isHit({ panel, outline }: BlockingFace, from: Point3, ray: Point3): boolean {
  const { normal, offset } = panel.plane;
  const slope = dot(normal, ray);
  if (Math.abs(slope) < 1e-9) return false;
  const far = (offset - dot(normal, from)) / slope;
  return far >= 1e-3 && contains(outline, onPanel(panel, plus(from, scaled(ray, far))));
}
