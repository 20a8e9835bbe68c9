import type { Fold, Net } from '../net.ts';
import { foldsOf, isStuck } from '../panel-tree.ts';
import { isFlatOn, signedAngle } from '../tube.ts';
import { flatFlaps } from './flat-flaps.ts';
import { twinFlaps } from './twins.ts';

/** A flap folded flat to one face of what it hangs on, and others, which it is like, to the other. */
type FlatWay = { readonly panel: string; readonly fold: Fold; readonly others: readonly string[] };

/** Flat flaps that fold the other way than their like. Of what is glued to one another the proof of the glue tells. */
export function flatWays(net: Net): readonly FlatWay[] {
  return [...closingFlaps(net), ...pocketsApart(net)];
}

/** The flap of an envelope that is folded to its front: the other way than all that hangs where it does. */
function closingFlaps(net: Net): FlatWay[] {
  return flatFlaps(net).flatMap((flap) => {
    const others = foldsOf(net, flap.on).filter((fold) => fold !== flap.fold);
    const isAlone = others.every((fold) => isFlatOn(fold) && turn(fold) === -turn(flap.fold));
    if (net.glue.length === 0 || isStuck(net, flap.panel) || others.length < 2 || !isAlone) return [];
    const names = others.flatMap(({ panels }) => panels.filter((panel) => panel !== flap.on));
    return [{ panel: flap.panel, fold: flap.fold, others: names }];
  });
}

/** Two pockets of a folder on two sides of it. */
function pocketsApart(net: Net): FlatWay[] {
  return twinFlaps(net).flatMap(([one, other]) => {
    const arePockets = one.on !== other.on && turn(one.fold) !== turn(other.fold);
    return arePockets ? [{ panel: one.panel, fold: one.fold, others: [other.panel] }] : [];
  });
}

function turn(fold: Fold): number {
  return Math.sign(signedAngle(fold));
}
