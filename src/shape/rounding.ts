import { Length } from '../measure/length.ts';

/**
 * Radii of corners in order round an outline, each as large as its two sides have room for; a side runs from its corner to
 * the next. Two that meet on a side share it by halves, or one has what the other leaves.
 */
export function fitRadii(wanted: readonly Length[], sides: readonly Length[]): readonly Length[] {
  return wanted.map((radius, index) => Length.min(radius, ...roomsAt(index, wanted, sides)));
}

/** The room that a corner has on the side before it and on the one after. */
export function roomsAt(
  index: number,
  radii: readonly Length[],
  sides: readonly Length[],
): readonly [Length, Length] {
  const at = (all: readonly Length[], place: number): Length => all.at(place % all.length) ?? Length.zero;
  const room = (side: Length, other: Length): Length => Length.max(side.half(), side.minus(other));
  return [room(at(sides, index - 1), at(radii, index - 1)), room(at(sides, index), at(radii, index + 1))];
}
