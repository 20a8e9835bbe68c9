import type { EditionName, Editions, Twin } from '../edition/editions.ts';
import type { Size } from '../measure/size.ts';
import { isSameRef, type Ref, writeRef } from '../project/ref.ts';
import type { Point2 } from '../shape/flat-polygon.ts';
import { outlineOf } from '../shape/layer-outline.ts';
import { baseSize } from '../shape/layers.ts';
import { boxCorners } from '../shape/outline.ts';
import { type Layer, onlyPanel, panelNamed, type Shapes } from '../shape/shapes.ts';
import { AT_ORIGIN, placeAll } from './outline.ts';
import { turn } from './region.ts';

/** From a layer's own paper to the paper of the lowest base, both in millimetres from their left and top. */
export type Carry = (point: Point2) => Point2;

/** One layer of a pile, with where it and its base lie. */
export type PiledLayer = {
  readonly layer: Twin<Layer>;
  readonly drawn: Layer;
  /** As it lies in the pile. */
  readonly outline: readonly Point2[];
  /** As it lies on its own base, turned and with its corners rounded. */
  readonly onBase: readonly Point2[];
  readonly basePose: Carry;
  /** From its own paper to the pile. */
  readonly pose: Carry;
};

/** A base with everything on it, in the order it is stuck on. Millimetres, full size. */
export type Pile = {
  readonly base: Ref;
  readonly size: Size;
  readonly outline: readonly Point2[];
  readonly placed: readonly PiledLayer[];
};

const AS_IT_LIES: Carry = (point) => point;

/** The lowest bases of a project: those that something lies on and that lie on nothing themselves. */
export function lowestBases({ inch: { shapes } }: Editions): readonly Ref[] {
  const lying = new Set(shapes.layers.map(({ piece }) => piece.id.value));
  const bases = new Map<string, Ref>();
  for (const { on } of shapes.layers) {
    if (on.part !== undefined || on.face !== 'outside' || !lying.has(on.piece)) bases.set(writeRef(on), on);
  }
  return [...bases.values()];
}

/** Everything on a base, and on what lies on it. Undefined when the base's size isn't known. */
export function pileOn(editions: Editions, base: Ref, leading: EditionName): Pile | undefined {
  const { shapes } = editions[leading];
  const surface = surfaceOf(shapes, base);
  if (!surface) return undefined;
  const poses = new Map<string, Carry>();
  const placed: PiledLayer[] = [];
  for (const [index, drawn] of shapes.layers.entries()) {
    const { on } = drawn;
    const [inch, metric] = [editions.inch.shapes.layers[index], editions.metric.shapes.layers[index]];
    if (!inch || !metric) continue;
    const isOnLayer = on.part === undefined && on.face === 'outside';
    const basePose = isSameRef(on, base) ? AS_IT_LIES : isOnLayer ? poses.get(on.piece) : undefined;
    if (!basePose) continue;
    const pose = poseOf(drawn);
    const inPile: Carry = (point) => basePose(pose(point));
    poses.set(drawn.piece.id.value, inPile);
    const onBase = placeAll(outlineOf(drawn, shapes), { scale: 1, ...AT_ORIGIN }).map(pose);
    placed.push({
      layer: { inch, metric },
      drawn,
      basePose,
      pose: inPile,
      onBase,
      outline: onBase.map(basePose),
    });
  }
  return { base, ...surface, placed };
}

/** Turned about its centre and moved to its place on its base. */
function poseOf({ left, top, size, turn: degrees }: Layer): Carry {
  const [halfWidth, halfHeight] = [size.width.mm / 2, size.height.mm / 2];
  return ({ x, y }) => {
    const turned = turn({ x: x - halfWidth, y: y - halfHeight }, degrees);
    return { x: turned.x + halfWidth + left.mm, y: turned.y + halfHeight + top.mm };
  };
}

/** Seen from inside what was left is right. */
function asSeen(points: readonly Point2[], { width }: Size, { face }: Ref): readonly Point2[] {
  return face !== 'outside' ? points.map(({ x, y }) => ({ x: width.mm - x, y })) : points;
}

function surfaceOf({ nets }: Shapes, base: Ref): Pick<Pile, 'size' | 'outline'> | undefined {
  const size = baseSize(base, nets);
  if (!size) return undefined;
  const panel = base.part === undefined ? onlyPanel(nets.get(base.piece)) : panelNamed(nets, base);
  if (!panel)
    return {
      size,
      outline: boxCorners<number>({ ...AT_ORIGIN, right: size.width.mm, bottom: size.height.mm }),
    };
  const { outline, box } = panel;
  return {
    size,
    outline: asSeen(placeAll(outline, { scale: 1, left: -box.left.mm, top: -box.top.mm }), size, base),
  };
}
