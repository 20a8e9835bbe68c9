import type { Length } from '../measure/length.ts';
import type { Piece } from '../project/model.ts';
import type { Net } from '../shape/net.ts';
import type { Layer } from '../shape/shapes.ts';
import { sidesOf } from './editions.ts';

/** One piece as built, with how it lies on its base and what else lies there already. */
export type Built = {
  readonly piece: Piece;
  /** Its sheets, its own first. */
  readonly nets: readonly Net[];
  readonly layer?: Layer | undefined;
  readonly beside: readonly Layer[];
};

/**
 * Whether everything that is cut, scored or stuck on by measure lies on the ruler. What is merely centered is not
 * measured: its border, the same on both sides, may lie between two marks.
 */
export function liesOnStep({ nets, layer }: Built, step: Length): boolean {
  const lengths = nets.flatMap(({ size, scores, panels }) => [
    size.width,
    size.height,
    ...scores.flatMap(({ at }) => at),
    ...panels.flatMap(({ box, slanted }) => (slanted ? [] : [box.left, box.top, box.right, box.bottom])),
  ]);
  if (!lengths.every((length) => length.isMultipleOf(step))) return false;
  const isSlanted = nets
    .concat(layer?.under.net ?? [])
    .some(({ shape, panels }) => shape && panels[0]?.slanted);
  return !layer || isSlanted || bordersLieOnStep(layer, step);
}

function bordersLieOnStep({ turn, centered, reveals, base }: Layer, step: Length): boolean {
  if (turn % 90 !== 0) return true;
  const lie = (borders: readonly Length[], isCentered: boolean, extent: Length): boolean =>
    // What is centered on a panel of an odd size, as a polygon is, has borders that nobody measures.
    (isCentered && !extent.isMultipleOf(step)) ||
    borders.every((border) => border.isMultipleOf(isCentered ? step.half() : step));
  return (
    lie([reveals.left, reveals.right], centered.across, base.width) &&
    lie([reveals.top, reveals.bottom], centered.upright, base.height)
  );
}

/**
 * Tells of another edition of a piece whether it keeps what is seen and done with this one: the same cuts, borders that
 * were equal are, what touched an edge, or lined up with another layer, still does, and a circle is one.
 */
export function signatureOf(own: Built): (other: Built) => boolean {
  const cuts = cutsOf(own);
  const equal = equalAmong(measuresOf(own));
  const neighbors = own.beside.map((other) => (own.layer ? equalAmong(alignments(own.layer, other)) : []));
  return (other) => {
    if (cutsOf(other) !== cuts || !areEqual(measuresOf(other), equal)) return false;
    return neighbors.every((pairs, index) => {
      const neighbor = other.beside[index];
      if (pairs.length === 0 || !other.layer || !neighbor) return true;
      return areEqual(alignments(other.layer, neighbor), pairs);
    });
  };
}

type Comparison = readonly [Length, Length];

/** The places of those comparisons that are of equal lengths. */
function equalAmong(comparisons: readonly Comparison[]): readonly number[] {
  return comparisons.flatMap(([first, second], index) => (first.equals(second) ? [index] : []));
}

function areEqual(comparisons: readonly Comparison[], places: readonly number[]): boolean {
  return places.every((place) => {
    const [first, second] = comparisons[place] ?? [];
    return first !== undefined && second !== undefined && first.equals(second);
  });
}

function cutsOf({ nets }: Built): string {
  return JSON.stringify(nets.map(({ cuts, panels }) => [cuts, panels.map(({ id }) => id)]));
}

/** Pairs of lengths of a piece that look equal where they are, in an order both editions share. */
function measuresOf({ piece, nets, layer }: Built): readonly Comparison[] {
  const radii = (piece.corners ?? []).map(({ radius }) => radius.value);
  const [net] = nets;
  const sides = net ? sidesOf(net.size) : [];
  // A corner may take a side, and two may meet on one.
  const taken = radii.flatMap((one, index) => [one, ...radii.slice(index).map((other) => one.plus(other))]);
  const round = taken.flatMap((each) => sides.map((side): Comparison => [each, side]));
  const cut = nets.flatMap(({ openings = [] }) =>
    openings.flatMap(({ margins }) => pairsOf(Object.values(margins))),
  );
  const popped = nets.flatMap(({ popUps = [] }) =>
    popUps.flatMap(({ ends, depths }) => [...pairsOf(ends), ...pairsOf(depths)]),
  );
  if (!layer || layer.turn % 90 !== 0) return [...round, ...cut, ...popped];
  const { left, right, top, bottom } = layer.reveals;
  const borders = [left, right, top, bottom];
  const nothing = left.minus(left);
  return [
    ...round,
    ...cut,
    ...popped,
    ...pairsOf(borders),
    ...borders.map((border): Comparison => [border, nothing]),
  ];
}

/** The edges of two layers on one base, across and upright: those that meet or line up are equal. */
function alignments(first: Layer, second: Layer): readonly Comparison[] {
  if (first.turn % 90 !== 0 || second.turn % 90 !== 0) return [];
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
