import type { Length } from '../../measure/length.ts';
import { tolerance } from '../closure/tolerance.ts';
import type { Fold } from '../net.ts';
import { foldsOf, isStuck, otherSide } from '../panel-tree.ts';
import { areFacing, isFlatOn, lineOf, reachFrom, signedAngle } from '../tube.ts';
import type { Stack } from './stack.ts';

/** A leaf that is rolled into a fold: it lies between two others, and hangs on one of them. */
export type RolledLeaf = {
  readonly leaf: string;
  /** The two it lies between; it hangs on the second. */
  readonly panels: readonly [string, string];
  /** How far it reaches from the fold it hangs by, and how far the one it hangs on. */
  readonly width: Length;
  readonly room: Length;
  /** The fold it hangs by. */
  readonly fold: Fold;
};

/** Every leaf that lies in a fold of the leaf it hangs on, but for what is glued and for pop-ups, which have rules of their own. */
export function rolledLeaves({ shape, sides }: Stack): readonly RolledLeaf[] {
  const { net } = shape;
  const strips = (net.popUps ?? []).flatMap(({ parts }) => parts);
  return net.panels.flatMap(({ id }) => {
    return pairsAcross(foldsOf(net, id).filter(isFlatOn)).flatMap(([one, other]): RolledLeaf[] => {
      const [leaf, cover] = [otherSide(one, id), otherSide(other, id)];
      if (leaf === undefined || cover === undefined || isStuck(net, leaf)) return [];
      if ([leaf, cover, id].some((panel) => strips.includes(panel))) return [];
      if (!sides.isBetween(leaf, cover, id)) return [];
      const [width, room] = [reachFrom(lineOf(one), net, leaf), reachFrom(lineOf(one), net, id)];
      return [{ leaf, panels: [cover, id], width, room, fold: one }];
    });
  });
}

/** Whether a leaf that lies in a fold is so wide that it stands against it. */
export function isTight({ width, room }: RolledLeaf, caliper: Length): boolean {
  return !room.minus(width).greaterThan(tolerance(caliper));
}

/** Every two folds on facing edges of one panel that are folded the same way, in both orders. */
function pairsAcross(folds: readonly Fold[]): (readonly [Fold, Fold])[] {
  return folds.flatMap((one) =>
    folds.flatMap((other) => {
      const isPair = areFacing(one, other) && signedAngle(one) === signedAngle(other);
      return isPair ? [[one, other] as const] : [];
    }),
  );
}
