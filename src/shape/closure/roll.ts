import type { Fold, Net } from '../net.ts';
import { foldsOf, otherSide } from '../panel-tree.ts';
import { areFacing, isFlatOn, lineOf, reachFrom, signedAngle } from '../tube.ts';

/**
 * Whether a fold is one of a roll: at the other side of one of its panels another leaf is folded the same way, so wide
 * that the two lie over each other. The outer one is the wider one then, as it should be. Gates, which meet, are none.
 */
export function isRolled(net: Net, fold: Fold): boolean {
  return fold.panels.some((carrier) => {
    const room = reachFrom(lineOf(fold), net, carrier);
    return foldsOf(net, carrier).some((other) => {
      const leaf = otherSide(other, carrier);
      if (leaf === undefined || !isFlatOn(other) || signedAngle(other) !== signedAngle(fold)) return false;
      if (!areFacing(other, fold)) return false;
      return reachFrom(lineOf(fold), net, leaf).times(4).greaterThan(room.times(3));
    });
  });
}
