import { Length } from '../../measure/length.ts';
import type { Size } from '../../measure/size.ts';
import { radiiOf } from '../../project/corners.ts';
import type { Piece } from '../../project/model.ts';
import type { Layer } from '../../shape/shapes.ts';

/** A border up to so wide is what was chosen, and not the size of the layer; as for the other edition. */
const WIDEST_BORDER: Length = Length.of(1, 4, 'in');
/** Narrower than this a border is no more than an edge. */
const LEAST_BORDER: Length = Length.of(1, 8, 'in');

/**
 * A layer on a base that has become another: with the same borders where they are narrow or alike, or where it would pass
 * the edge of a smaller base, else of its own size.
 */
export function resizeLayer(layer: Layer, base: Size): Piece | undefined {
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
