import type { FoldedShape } from '../folded-shape.ts';
import type { Fold } from '../net.ts';
import type { Sides } from './sides.ts';

/** A sheet as far as it is folded, and how its panels lie on one another. */
export type Stack = {
  readonly shape: FoldedShape;
  readonly sides: Sides;
  /** The same, and those that lay on one another on the way and don't any more. */
  readonly met: Sides;
  readonly made: ReadonlySet<Fold>;
  /** Folds that could not be closed. */
  readonly crossings: readonly Crossing[];
};

/** A fold that cannot be closed, because paper between its two panels reaches past it, `by` millimeters. */
export type Crossing = { readonly fold: Fold; readonly between: string; readonly by: number };

/** Square millimeters; what overlaps less only touches. */
export const TOUCHING = 0.5;

/** How near two panels lie, in millimeters, that lie on one another, in paper of this thickness. */
export function nearness(caliper: number): number {
  return 2 * caliper + 0.5;
}
