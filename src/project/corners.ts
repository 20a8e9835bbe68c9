import { Length } from '../measure/length.ts';
import type { At } from './source.ts';

/** The corners of a piece as it lies in front of you, clockwise. */
export const CORNERS = ['top left', 'top right', 'bottom right', 'bottom left'] as const;
export type Corner = (typeof CORNERS)[number];

/** A radius and the corners that are rounded by it, clockwise. */
export type Rounding = { readonly radius: At<Length>; readonly corners: readonly Corner[] };

/** Which corners are rounded, each by one radius; the others are square. One entry for each radius that is written. */
export type RoundedCorners = readonly Rounding[];

/** What one corner, or the two of one side, are called. */
export type CornerName = 'top' | 'bottom' | 'left' | 'right' | Corner;

export const CORNERS_OF: Readonly<Record<CornerName, readonly Corner[]>> = {
  top: ['top left', 'top right'],
  bottom: ['bottom right', 'bottom left'],
  left: ['top left', 'bottom left'],
  right: ['top right', 'bottom right'],
  'top left': ['top left'],
  'top right': ['top right'],
  'bottom right': ['bottom right'],
  'bottom left': ['bottom left'],
};

/** How one corner is rounded; undefined of a square one. */
export function roundingAt(rounded: RoundedCorners = [], corner: Corner): Rounding | undefined {
  return rounded.find(({ corners }) => corners.includes(corner));
}

/** The radii of all four, clockwise from the top left; nothing of a square one. */
export function radiiOf(rounded: RoundedCorners | undefined): readonly Length[] {
  return CORNERS.map((corner) => roundingAt(rounded, corner)?.radius.value ?? Length.zero);
}

/** Whether it is all of them. */
export function areAll(corners: readonly Corner[]): boolean {
  return corners.length === CORNERS.length;
}

/** The fewest names that some corners have between them: `top`, `bottom left`. */
export function namesOf(corners: readonly Corner[]): readonly CornerName[] {
  const left = new Set(corners);
  const names = Object.entries(CORNERS_OF) as readonly (readonly [CornerName, readonly Corner[]])[];
  return names.flatMap(([name, those]) => {
    if (!those.every((corner) => left.has(corner))) return [];
    for (const corner of those) left.delete(corner);
    return [name];
  });
}
