import { movePiece } from '../../edition/primaries.ts';
import { Length } from '../../measure/length.ts';
import { LONGEST } from '../../measure/notation.ts';
import type { Size } from '../../measure/size.ts';
import { radiiOf } from '../../project/corners.ts';
import type { FormSetting } from '../../project/form-grammar.ts';
import type { Piece, Project } from '../../project/model.ts';
import { mergeFindings } from '../../proof/tell.ts';
import { sayLength } from '../../proof/words.ts';
import { buildShapes, buildSheets } from '../../shape/build.ts';
import type { Made } from '../../shape/closed-size.ts';
import type { Triple } from '../../shape/closure/packing.ts';
import { roomsOf } from '../../shape/closure/rooms.ts';
import { baseSize } from '../../shape/layers.ts';
import type { Net } from '../../shape/net.ts';
import type { Layer } from '../../shape/shapes.ts';
import type { Holder } from './room.ts';

/** A box of another size, or why it cannot be given one. */
type Resized = { readonly piece: Piece } | { readonly why: string };

/** A project with its box of another size and its layers after it, or why not. */
type Remaking = { readonly made: Made } | { readonly why: string };

/** Makes the box of a project so much wider, higher and deeper, and what lies on it larger with it. */
export function remake(made: Made, holder: Holder, growth: Triple): Remaking {
  const { project } = made;
  const tooLong = holder.size
    .map((side, way) => side.plus(growth[way as 0 | 1 | 2]))
    .find((side) => side.greaterThan(LONGEST));
  if (tooLong) {
    const long = sayLength(tooLong, project.unit);
    return { why: `${holder.piece.id.value} would be ${long} long inside, and no length may be over 1 m` };
  }
  const resized = resizeHolder(holder, growth);
  if ('why' in resized) return resized;
  const pieces = new Map(project.pieces).set(holder.piece.id.value, resized.piece);
  const built = buildSheets(resized.piece, project);
  const [fault] = mergeFindings(built.findings);
  if (fault) return { why: [fault.message, ...(fault.remedy ? [fault.remedy] : [])].join('; ') };
  if (!hasRoom(built.sheets[0]?.net, holder, growth)) {
    return {
      why: `${holder.piece.id.value} of that size cannot be made, or not by its width, height and depth alone`,
    };
  }
  const nets = new Map(made.shapes.nets).set(holder.piece.id.value, built.sheets);
  for (const layer of made.shapes.layers) {
    const base = baseSize(layer.on, nets);
    const moved = base && resizeLayer(layer, base);
    if (!moved) continue;
    pieces.set(moved.id.value, moved);
    nets.set(moved.id.value, buildSheets(moved, project).sheets);
  }
  const now: Project = { ...project, pieces };
  return { made: { project: now, shapes: buildShapes(now) } };
}

function hasRoom(net: Net | undefined, { size }: Holder, growth: Triple): boolean {
  const rooms = net ? roomsOf(net) : [];
  return rooms.some((room) =>
    size.every((length, way) => room.size[way]?.equals(length.plus(growth[way as 0 | 1 | 2]))),
  );
}

/** A form by the lengths behind `inside:` or `outside:`, a net by the gaps between its score lines. */
function resizeHolder({ piece, size }: Holder, growth: Triple): Resized {
  const { body } = piece;
  if (body.kind === 'flat') return { why: `${piece.id.value} is flat` };
  if (body.kind === 'net') return resizeNet(piece, size, growth);
  const [width, height, depth] = growth;
  const key = ['inside', 'outside'].find((each) => body.settings.has(each)) ?? '';
  const setting = body.settings.get(key);
  if (setting?.kind !== 'lengths' || setting.lengths.length !== 3) {
    return { why: `${piece.id.value} is no form with an inside: of width × depth × height` };
  }
  const more = [width, depth, height];
  const lengths = setting.lengths.map(({ value, at }, way) => ({
    value: value.plus(more[way] ?? Length.zero),
    at,
  }));
  const settings = new Map<string, FormSetting>(body.settings).set(key, { ...setting, lengths });
  return { piece: { ...piece, body: { ...body, settings } } };
}

/** Every gap that is as wide as the box is wide, high or deep, or half as wide, becomes that; the others stay. */
function resizeNet(piece: Piece, size: Triple, growth: Triple): Resized {
  const ways = size.map((from, way) => ({ from, to: from.plus(growth[way as 0 | 1 | 2]) }));
  const known = [...ways, ...ways.map(({ from, to }) => ({ from: from.half(), to: to.half() }))];
  let unclear: Length | undefined;
  const moved = movePiece(piece, 'in', (own, kind) => {
    if (kind === 'place') return own;
    const [first, ...others] = known.filter(({ from }) => from.equals(own));
    if (others.some(({ to }) => first && !to.equals(first.to))) unclear ??= own;
    return first?.to ?? own;
  });
  if (unclear) {
    return {
      why: `${piece.id.value} has score lines as far apart for one of width, height and depth as for another, or for half of one, so nobody knows which are to move`,
    };
  }
  return { piece: moved };
}

/** A border up to so wide is what was chosen, and not the size of the layer; as for the other edition. */
const WIDEST_BORDER: Length = Length.of(1, 4, 'in');
/** Narrower than this a border is no more than an edge. */
const LEAST_BORDER: Length = Length.of(1, 8, 'in');

/**
 * A layer on a base that has become another: with the same borders where they are narrow or alike, or where it would pass
 * the edge of a smaller base, else of its own size.
 */
function resizeLayer(layer: Layer, base: Size): Piece | undefined {
  const { piece, base: old, size, turn, reveals, centered } = layer;
  const { body, corners, overhang } = piece;
  if (body.kind !== 'flat' || body.outline || overhang || turn % 90 !== 0) return undefined;
  const isRound = radiiOf(corners).every(
    (each) => !each.times(2).lessThan(Length.min(size.width, size.height)),
  );
  if (isRound) return undefined;
  const { left, right, top, bottom } = reveals;
  const isEven = [right, top, bottom].every((each) => each.equals(left));
  const { placement } = piece;
  const growth = (near: Length, far: Length, more: Length, isCentered: boolean): Length => {
    const left = far.plus(isCentered ? more.half() : more);
    const isTight = left.lessThan(Length.min(far, LEAST_BORDER));
    const isNarrow = !Length.max(near, far).greaterThan(WIDEST_BORDER);
    return isEven || isNarrow || isTight ? more : Length.zero;
  };
  const across = growth(
    ...(placement.left ? ([left, right] as const) : ([right, left] as const)),
    base.width.minus(old.width),
    centered.across,
  );
  const upright = growth(
    ...(placement.top ? ([top, bottom] as const) : ([bottom, top] as const)),
    base.height.minus(old.height),
    centered.upright,
  );
  const [wider, higher] = turn % 180 === 0 ? [across, upright] : [upright, across];
  const { width, height } = body.cut;
  const [wide, high] = [width.value.plus(wider), height.value.plus(higher)];
  // What there is no room for at all is left as it was, for the proof to tell.
  const cut = {
    ...body.cut,
    width: wide.sign > 0 ? { ...width, value: wide } : width,
    height: high.sign > 0 ? { ...height, value: high } : height,
  };
  if (cut.width.value.equals(width.value) && cut.height.value.equals(height.value)) return undefined;
  return { ...piece, body: { ...body, cut } };
}
