import type { Editions } from '../edition/editions.ts';
import type { Size } from '../measure/size.ts';
import type { BaseReference } from '../project/model.ts';
import type { Point2 } from '../shape/flat-polygon.ts';
import { boxSize, type Net, type Panel } from '../shape/net.ts';
import { type Layer, type Shapes, sheetsOf } from '../shape/shapes.ts';
import { AT_ORIGIN, placeAll } from './outline.ts';
import { boxCorners, turn } from './region.ts';
import type { LayerTwin } from './style.ts';

/** From a layer's own paper to the paper of the lowest base, both in millimetres from their left and top. */
type Carry = (point: Point2) => Point2;

/** One layer of a pile, with where it and its base lie. */
export type PiledLayer = {
  readonly layer: LayerTwin;
  readonly drawn: Layer;
  /** As it lies in the pile. */
  readonly outline: readonly Point2[];
  /** As it lies on its own base, turned and with its corners rounded. */
  readonly onBase: readonly Point2[];
  readonly basePose: Carry;
};

/** A base with everything on it, in the order it is stuck on. Millimetres, full size. */
export type Pile = {
  readonly base: BaseReference;
  readonly size: Size;
  readonly outline: readonly Point2[];
  readonly placed: readonly PiledLayer[];
};

const AS_IT_LIES: Carry = (point) => point;

/** The lowest bases of a project: those that something lies on and that lie on nothing themselves. */
export function lowestBases({ inch: { shapes } }: Editions): readonly BaseReference[] {
  const lying = new Set(shapes.layers.map(({ piece }) => piece.id.value));
  const bases = new Map<string, BaseReference>();
  for (const { piece, baseName } of shapes.layers) {
    const base = piece.on?.value;
    if (base && (base.panel !== undefined || !lying.has(base.piece))) bases.set(baseName, base);
  }
  return [...bases.values()];
}

/** Everything on a base, and on what lies on it. Undefined when the base's size isn't known. */
export function pileOn(
  editions: Editions,
  base: BaseReference,
  leading: 'inch' | 'metric',
): Pile | undefined {
  const { shapes } = editions[leading];
  const surface = surfaceOf(shapes, base);
  if (!surface) return undefined;
  const poses = new Map<string, Carry>();
  const placed: PiledLayer[] = [];
  for (const [index, drawn] of shapes.layers.entries()) {
    const own = drawn.piece.on?.value;
    const [inch, metric] = [editions.inch.shapes.layers[index], editions.metric.shapes.layers[index]];
    if (!own || !inch || !metric) continue;
    const direct = own.piece === base.piece && own.panel === base.panel;
    const basePose = direct ? AS_IT_LIES : own.panel === undefined ? poses.get(own.piece) : undefined;
    if (!basePose) continue;
    const pose = poseOf(drawn);
    poses.set(drawn.piece.id.value, (point) => basePose(pose(point)));
    const onBase = ownOutline(shapes, drawn).map(pose);
    placed.push({ layer: { inch, metric }, drawn, basePose, onBase, outline: onBase.map(basePose) });
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

function surfaceOf(
  shapes: Shapes,
  { piece, panel }: BaseReference,
): Pick<Pile, 'size' | 'outline'> | undefined {
  const sheets = sheetsOf(shapes.nets, piece);
  if (panel === undefined) {
    const net = sheets[0]?.net;
    return net && { size: net.size, outline: wholeOutline(net) };
  }
  const panels = sheets.flatMap(({ net }) => net.panels);
  const found = panels.find(({ id, name }) => id === panel || (!name && id === panel.toUpperCase()));
  return found && { size: boxSize(found.box), outline: panelOutline(found) };
}

function ownOutline(shapes: Shapes, { piece, size }: Layer): readonly Point2[] {
  const net = shapes.nets.get(piece.id.value);
  return net && net.folds.length === 0 ? wholeOutline(net) : rectangle(size);
}

function wholeOutline(net: Net): readonly Point2[] {
  const [panel, ...more] = net.panels;
  return panel && more.length === 0
    ? placeAll(panel.outline, { scale: 1, ...AT_ORIGIN })
    : rectangle(net.size);
}

function panelOutline({ outline, box }: Panel): readonly Point2[] {
  return placeAll(outline, { scale: 1, left: -box.left.mm, top: -box.top.mm });
}

function rectangle({ width, height }: Size): readonly Point2[] {
  return boxCorners({ ...AT_ORIGIN, right: width.mm, bottom: height.mm });
}
