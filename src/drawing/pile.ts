import type { Editions, Twin } from '../edition/editions.ts';
import { Length } from '../measure/length.ts';
import type { EditionName } from '../measure/ruler-unit.ts';
import type { Size } from '../measure/size.ts';
import { isSameRef, type Ref, writeRef } from '../project/ref.ts';
import type { Point2 } from '../shape/flat-polygon.ts';
import { onSheet, openingsOf, outlineOf } from '../shape/layer-outline.ts';
import { baseSize } from '../shape/layers.ts';
import type { FlatPoint } from '../shape/net.ts';
import { boxCorners } from '../shape/outline.ts';
import { type Layer, type Shapes, underOf } from '../shape/shapes.ts';
import { AT_ORIGIN, placeAll } from './outline.ts';
import { turn } from './region.ts';

/** From a layer's own paper to the paper of the lowest base, both in millimeters from their left and top. */
export type Carry = (point: Point2) => Point2;

/** Paper in a pile: its edge, what is cut out of it, and what is stuck behind that. */
export type PiledSheet = {
  readonly piece: string;
  readonly outline: readonly Point2[];
  readonly openings: readonly (readonly Point2[])[];
  readonly behind: readonly Pick<PiledSheet, 'piece' | 'outline'>[];
};

/** One layer of a pile, with where it and its base lie. */
export type PiledLayer = {
  readonly layer: Twin<Layer>;
  readonly drawn: Layer;
  /** As it lies in the pile. */
  readonly sheet: PiledSheet;
  /** As it lies on its own base, turned and with its corners rounded. */
  readonly onBase: readonly Point2[];
  readonly basePose: Carry;
  /** From its own paper to the pile. */
  readonly pose: Carry;
};

/** A base with everything on it, in the order it is stuck on. Millimeters, full size. */
export type Pile = {
  readonly base: Ref;
  readonly size: Size;
  readonly sheet: PiledSheet;
  readonly placed: readonly PiledLayer[];
};

const AS_IT_LIES: Carry = (point) => point;

/** The lowest bases of a project: those that something lies on and that lie on nothing themselves. */
export function lowestBases({ inch: { shapes } }: Editions): readonly Ref[] {
  // What is behind something is seen from its other side.
  const lying = new Set(
    shapes.layers.filter(({ on }) => on.face !== 'behind').map(({ piece }) => piece.id.value),
  );
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
    const { value: piece } = drawn.piece.id;
    const inPile: Carry = (point) => basePose(pose(point));
    if (on.face !== 'behind') poses.set(piece, inPile);
    const carried = (points: readonly FlatPoint[]): Point2[] => placeAll(points, FULL_SIZE).map(inPile);
    const onBase = placeAll(outlineOf(drawn, shapes), FULL_SIZE).map(pose);
    const sheet = {
      piece,
      outline: onBase.map(basePose),
      openings: openingsOf(drawn, shapes).map(carried),
      behind: behindOf(shapes, piece).map((each) => ({ ...each, outline: carried(each.outline) })),
    };
    placed.push({ layer: { inch, metric }, drawn, basePose, pose: inPile, onBase, sheet });
  }
  return { base, ...surface, placed };
}

const FULL_SIZE = { scale: 1, ...AT_ORIGIN };

/** What is stuck behind a piece, or behind the openings in one panel of it, on the piece's own sheet. */
function behindOf(
  shapes: Shapes,
  piece: string,
  panel?: string,
): { readonly piece: string; readonly outline: readonly FlatPoint[] }[] {
  const behind = shapes.layers.filter(
    ({ on, under }) =>
      on.piece === piece && on.face === 'behind' && (panel === undefined || under.panel?.id === panel),
  );
  return behind.flatMap((layer) => withLayersOn(layer, shapes, (point) => onSheet(layer, point)));
}

/** A layer and what is stuck on it, carried to where it is looked at. */
function withLayersOn(
  layer: Layer,
  shapes: Shapes,
  carry: (point: FlatPoint) => FlatPoint,
): { readonly piece: string; readonly outline: readonly FlatPoint[] }[] {
  const piece = layer.piece.id.value;
  const above = shapes.layers.filter(({ on }) => on.piece === piece && on.face === 'outside');
  return [
    { piece, outline: outlineOf(layer, shapes).map(carry) },
    ...above.flatMap((each) => withLayersOn(each, shapes, (point) => carry(onSheet(each, point)))),
  ];
}

/** Turned about its center and moved to its place on its base. */
function poseOf({ left, top, size, turn: degrees, on }: Layer): Carry {
  const [halfWidth, halfHeight] = [size.width.mm / 2, size.height.mm / 2];
  return ({ x, y }) => {
    const across = on.face === 'behind' ? halfWidth - x : x - halfWidth;
    const turned = turn({ x: across, y: y - halfHeight }, degrees);
    return { x: turned.x + halfWidth + left.mm, y: turned.y + halfHeight + top.mm };
  };
}

/** Seen from inside what was left is right. */
function asSeen(points: readonly Point2[], { width }: Size, { face }: Ref): readonly Point2[] {
  return face !== 'outside' ? points.map(({ x, y }) => ({ x: width.mm - x, y })) : points;
}

function surfaceOf(shapes: Shapes, base: Ref): Pick<Pile, 'size' | 'sheet'> | undefined {
  const { nets } = shapes;
  const size = baseSize(base, nets);
  const under = underOf(nets, base);
  if (!size || !under) return undefined;
  const { net, panel } = under;
  const { piece } = base;
  const { left, top } = panel?.box ?? { left: Length.zero, top: Length.zero };
  const seen = (points: readonly FlatPoint[]): readonly Point2[] =>
    asSeen(placeAll(points, { scale: 1, left: -left.mm, top: -top.mm }), size, base);
  const whole = boxCorners({ left: Length.zero, top: Length.zero, right: size.width, bottom: size.height });
  const own = (net.openings ?? []).filter((opening) => opening.panel === panel?.id);
  const behind = panel && base.face === 'outside' ? behindOf(shapes, piece, panel.id) : [];
  const sheet = {
    piece,
    outline: seen(panel?.outline ?? whole),
    openings: own.map(({ outline }) => seen(outline)),
    behind: behind.map((each) => ({ ...each, outline: seen(each.outline) })),
  };
  return { size, sheet };
}
