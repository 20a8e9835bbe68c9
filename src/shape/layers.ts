import type { Length } from '../measure/length.ts';
import type { Size } from '../measure/size.ts';
import type { BaseReference, Piece, Placement, Project } from '../project/model.ts';
import { nameRemedy } from './nearest.ts';
import { boxSize, type Net, type Panel } from './net.ts';
import { type Layer, type ShapeProblem, sheetsOf } from './shapes.ts';
import { turned } from './turning.ts';

/** Every layer whose base is known, bases first; and the bases that cannot be. */
export type Layers = { readonly layers: readonly Layer[]; readonly problems: readonly ShapeProblem[] };

/** Lays every piece that has a base on it. A piece whose base (or own size) is not known is left out. */
export function layPieces(project: Project, nets: ReadonlyMap<string, Net>): Layers {
  const problems: ShapeProblem[] = [];
  const layers: Layer[] = [];
  const { circles, order } = stackingOrder(project.pieces);
  problems.push(...circles.map((circle) => circleProblem(circle)));
  for (const piece of order) {
    const own = nets.get(piece.id.value);
    const reference = piece.on?.value;
    if (!own || !reference) continue;
    const base = baseOf(reference, piece, nets);
    if (base.problem) problems.push(base.problem);
    if (base.size) layers.push(lay(piece, layerSize(own), baseName(reference), base.size));
  }
  return { layers, problems };
}

/** `box.front` or `front`, as a person names it. */
export function baseName({ piece, panel }: BaseReference): string {
  return panel === undefined ? piece : `${piece}.${panel}`;
}

/**
 * What of a piece lies on its base: a flat piece whole, a folded one with its largest panel (the first of equals).
 */
function layerSize(net: Net): Size {
  if (net.folds.length === 0) return net.size;
  const area = ({ box }: Panel): number => boxSize(box).width.mm * boxSize(box).height.mm;
  const [first, ...rest] = net.panels;
  if (!first) return net.size;
  return boxSize(rest.reduce((largest, each) => (area(each) > area(largest) ? each : largest), first).box);
}

function baseOf(
  { piece: id, panel: name }: BaseReference,
  layer: Piece,
  nets: ReadonlyMap<string, Net>,
): { readonly size?: Size; readonly problem?: ShapeProblem } {
  const net = nets.get(id);
  if (!net) return {};
  if (name === undefined) return { size: net.size };
  const panels = sheetsOf(nets, id).flatMap((sheet) => sheet.net.panels);
  const panel = panels.find((each) => each.id === name) ?? panelByCell(panels, name);
  if (panel) return { size: boxSize(panel.box) };
  const names = panels.map((each) => each.name ?? each.id);
  return {
    problem: {
      rule: 'unknown-reference',
      message: `${layer.id.value} lies on ${id}.${name}, but ${id} has no panel "${name}"`,
      remedy: nameRemedy(name, names),
      at: layer.on?.at ?? layer.at,
    },
  };
}

/** A panel without a name is known by its cell, in either case of letters. */
function panelByCell(panels: readonly Panel[], name: string): Panel | undefined {
  return panels.find((each) => each.name === undefined && each.id === name.toUpperCase());
}

/** One piece on its base. Distances `at:` gives are to the layer as it lies, turned. */
function lay(piece: Piece, size: Size, base: string, baseSize: Size): Layer {
  const { placement } = piece;
  const turn = placement.turn?.value ?? 0;
  const reach = turned(size, turn, piece.corners?.value);
  const across = along(placement.left, placement.right, baseSize.width, reach.halfWidth);
  const upright = along(placement.top, placement.bottom, baseSize.height, reach.halfHeight);
  return {
    piece,
    baseName: base,
    base: baseSize,
    size,
    left: across.centre.minus(size.width.half()),
    top: upright.centre.minus(size.height.half()),
    turn,
    reveals: {
      left: across.centre.minus(reach.halfWidth),
      right: baseSize.width.minus(across.centre).minus(reach.halfWidth),
      top: upright.centre.minus(reach.halfHeight),
      bottom: baseSize.height.minus(upright.centre).minus(reach.halfHeight),
    },
    corners: reach.corners.map(({ x, y }) => ({ x: x.plus(across.centre), y: y.plus(upright.centre) })),
    centred: { across: across.centred, upright: upright.centred },
  };
}

/** Where the layer's centre lies in one direction. The near edge's distance wins over the far one's. */
function along(
  near: Placement['left'],
  far: Placement['right'],
  extent: Length,
  half: Length,
): { readonly centre: Length; readonly centred: boolean } {
  if (near) return { centre: near.value.plus(half), centred: false };
  if (far) return { centre: extent.minus(far.value).minus(half), centred: false };
  return { centre: extent.half(), centred: true };
}

type Stacking = { readonly order: readonly Piece[]; readonly circles: readonly (readonly Piece[])[] };

/** Bases before what lies on them, else as written. What is in a circle, or lies on one, is in no order. */
function stackingOrder(pieces: ReadonlyMap<string, Piece>): Stacking {
  const order = new Set<Piece>();
  const circles: (readonly Piece[])[] = [];
  const lost = new Set<Piece>();
  for (const piece of pieces.values()) {
    const chain: Piece[] = [];
    let next: Piece | undefined = piece;
    while (next && !order.has(next) && !lost.has(next) && !chain.includes(next)) {
      chain.push(next);
      next = next.on && pieces.get(next.on.value.piece);
    }
    const circular = next && chain.includes(next);
    if (circular && next) circles.push(chain.slice(chain.indexOf(next)));
    const dead = circular || (next && lost.has(next));
    for (const each of chain.toReversed()) (dead ? lost : order).add(each);
  }
  return { order: [...order], circles };
}

function circleProblem(circle: readonly Piece[]): ShapeProblem {
  const [first, ...others] = circle;
  if (!first) throw new Error('a circle of bases without a piece');
  const names = circle.map(({ id }) => id.value);
  const message =
    circle.length === 1
      ? `${first.id.value} lies on itself`
      : `${names.join(' lies on ')} lies on ${first.id.value}: a circle that rests on nothing`;
  return {
    rule: 'circular-base',
    message,
    remedy: 'name another piece behind "on:", or take one "on:" out',
    at: first.on?.at ?? first.at,
    notes: others.flatMap(({ id, on }) =>
      on ? [{ message: `${id.value} lies on ${on.value.piece}`, at: on.at }] : [],
    ),
  };
}
