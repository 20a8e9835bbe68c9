import type { Length } from '../measure/length.ts';
import type { Size } from '../measure/size.ts';
import type { Placement } from '../project/sizes-as-written.ts';
import type { FlatPoint, Margins } from './net.ts';
import { type Reach, turned } from './turning.ts';

/** How something lies on a face: a layer, or an opening in it. */
export type Lying = {
  readonly size: Size;
  /** Left and top edge of it, unturned, from the left and top of the face. */
  readonly left: Length;
  readonly top: Length;
  /** Degrees clockwise about its own center. */
  readonly turn: number;
  /** What it leaves of the face on each side, by its true (turned) corners; negative where it passes the edge. */
  readonly reveals: Margins;
  /** Its true corners on the face. */
  readonly corners: readonly FlatPoint[];
  /** No distance was given for this direction, so it lies centered. */
  readonly centered: { readonly across: boolean; readonly upright: boolean };
};

type LyingRequest = {
  readonly size: Size;
  readonly placement: Placement;
  /** How far it reaches from its center, turned; as far as a rectangle when absent. */
  readonly reachAt?: (turn: number) => Reach;
  /** Where its center comes to without a distance; the middle of the face when absent. */
  readonly middle?: FlatPoint | undefined;
};

/** Puts something on a face of this size. Distances are to it as it lies, turned. */
export function lieOn(face: Size, { size, placement, reachAt, middle }: LyingRequest): Lying {
  const turn = placement.turn?.value ?? 0;
  const reach = reachAt?.(turn) ?? turned(size, turn);
  const [x, y] = [middle?.x ?? face.width.half(), middle?.y ?? face.height.half()];
  const across = along(placement.left, placement.right, face.width, [reach.left, reach.right], x);
  const upright = along(placement.top, placement.bottom, face.height, [reach.top, reach.bottom], y);
  return {
    size,
    left: across.center.minus(size.width.half()),
    top: upright.center.minus(size.height.half()),
    turn,
    reveals: {
      left: across.center.minus(reach.left),
      right: face.width.minus(across.center).minus(reach.right),
      top: upright.center.minus(reach.top),
      bottom: face.height.minus(upright.center).minus(reach.bottom),
    },
    corners: reach.corners.map((corner) => ({
      x: corner.x.plus(across.center),
      y: corner.y.plus(upright.center),
    })),
    centered: { across: across.centered, upright: upright.centered },
  };
}

/** Where the center lies in one direction. The near edge's distance wins over the far one's. */
function along(
  near: Placement['left'],
  far: Placement['right'],
  extent: Length,
  [before, after]: readonly [Length, Length],
  middle: Length,
): { readonly center: Length; readonly centered: boolean } {
  if (near) return { center: near.value.plus(before), centered: false };
  if (far) return { center: extent.minus(far.value).minus(after), centered: false };
  return { center: middle, centered: true };
}
