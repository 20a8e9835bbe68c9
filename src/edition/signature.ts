import type { Length } from '../measure/length.ts';
import type { Piece } from '../project/model.ts';
import type { Net } from '../shape/net.ts';
import type { Layer } from '../shape/shapes.ts';

/** One piece as built, with how it lies on its base and what else lies there already. */
export type Built = {
  readonly piece: Piece;
  /** Its sheets, its own first. */
  readonly nets: readonly Net[];
  readonly layer?: Layer | undefined;
  readonly beside: readonly Layer[];
};

/** Whether everything that is cut, scored or stuck on lies on the ruler, as far as it is square to the paper. */
export function liesOnStep({ nets, layer }: Built, step: Length): boolean {
  const lengths = [
    ...nets.flatMap(({ size, scores, panels }) => [
      size.width,
      size.height,
      ...scores.flatMap(({ at }) => at),
      ...panels.flatMap(({ box }) => [box.left, box.top, box.right, box.bottom]),
    ]),
    ...(layer && isSquare(layer) ? Object.values(layer.reveals) : []),
  ];
  return lengths.every((length) => length.isMultipleOf(step));
}

/**
 * Whether one edition of a piece keeps what the eye sees of the other: borders that were equal are, what touched an
 * edge, or lined up with another layer, still does, what was centered is, and a circle is one.
 */
export function keepsSignature(own: Built, other: Built): boolean {
  const [before, after] = [comparisonsOf(own), comparisonsOf(other)];
  return before.every(([a, b], index) => {
    const now = after[index];
    return !a.equals(b) || now?.[0].equals(now[1]);
  });
}

type Comparison = readonly [Length, Length];

/** Pairs of lengths that look equal where they are, in an order both editions share. */
function comparisonsOf({ piece, nets, layer, beside }: Built): readonly Comparison[] {
  const corners = piece.corners?.value.times(2);
  const [net] = nets;
  const round: Comparison[] =
    corners && net
      ? [
          [corners, net.size.width],
          [corners, net.size.height],
        ]
      : [];
  if (!layer || !isSquare(layer)) return round;
  const { left, right, top, bottom } = layer.reveals;
  const nothing = left.minus(left);
  const borders: Comparison[] = [
    ...pairsOf([left, right, top, bottom]),
    ...[left, right, top, bottom].map((border): Comparison => [border, nothing]),
  ];
  const lines = beside.filter(isSquare).flatMap((other) => alignments(layer, other));
  return [...round, ...borders, ...lines];
}

/** The edges of two layers on one base, across and upright: those that meet or line up are equal. */
function alignments(first: Layer, second: Layer): Comparison[] {
  const [a, b] = [edgesOf(first), edgesOf(second)];
  return [
    ...a.across.flatMap((edge) => b.across.map((other): Comparison => [edge, other])),
    ...a.upright.flatMap((edge) => b.upright.map((other): Comparison => [edge, other])),
  ];
}

function edgesOf({ base, reveals }: Layer): {
  readonly across: readonly Length[];
  readonly upright: readonly Length[];
} {
  const { width, height } = base;
  return {
    across: [reveals.left, width.minus(reveals.right)],
    upright: [reveals.top, height.minus(reveals.bottom)],
  };
}

function pairsOf(lengths: readonly Length[]): Comparison[] {
  return lengths.flatMap((first, index) =>
    lengths.slice(index + 1).map((second): Comparison => [first, second]),
  );
}

/** Whether a layer's edges run along its base's. */
function isSquare({ turn }: Layer): boolean {
  return turn % 90 === 0;
}
