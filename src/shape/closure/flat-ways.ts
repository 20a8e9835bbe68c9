import type { Fold, Net } from '../net.ts';
import { foldBetween, foldsOf, isStuck, otherSide } from '../panel-tree.ts';
import { areFacing, isFlatOn, isOneLine, lineOf, reachFrom, signedAngle } from '../tube.ts';
import { type FlatFlap, flatFlaps } from './flat-flaps.ts';
import { WIDEST_TAB } from './seam.ts';
import { twinFlaps } from './twins.ts';

/** A flap folded flat to one face of what it hangs on, and others, which it is like, to the other. */
type FlatWay = { readonly panel: string; readonly fold: Fold; readonly others: readonly string[] };

/** Flat flaps that fold the other way than their like. Of what is glued to one another the proof of the glue tells. */
export function flatWays(net: Net): readonly FlatWay[] {
  return [...closingFlaps(net), ...mouthFlaps(net), ...pocketsApart(net)];
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

/**
 * The same where the flap hangs on one of the two sheets of a pocket, across from the fold between them. One that hangs
 * on the shorter sheet may be its cuff, one as long as that is a leaf, and a narrow one is a hem.
 */
function mouthFlaps(net: Net): FlatWay[] {
  return flatFlaps(net).flatMap(({ panel, on, fold }: FlatFlap) => {
    const [bottom, ...others] = foldsOf(net, on).filter((each) => each !== fold && !isOfStuck(net, on, each));
    const sheet = bottom && otherSide(bottom, on);
    if (!bottom || sheet === undefined || others.length > 0) return [];
    const across = lineOf(fold);
    const [own, under, facing] = [panel, on, sheet].map((each) => reachFrom(across, net, each));
    const isFlap = own?.greaterThan(WIDEST_TAB) && under && facing && own.lessThan(under);
    if (!isFlap || under.lessThan(facing) || !areFacing(bottom, fold) || !areStuck(net, [on, sheet], bottom))
      return [];
    const isAway = isFlatOn(bottom) && turn(bottom) === -turn(fold);
    const isLoose = isStuck(net, panel) || net.opens?.includes(panel);
    return isAway && !isLoose ? [{ panel, fold, others: [sheet] }] : [];
  });
}

/** Whether a tab that hangs on one of two sheets, folded the way these are, is stuck to the other. */
function areStuck(net: Net, [one, other]: readonly [string, string], bottom: Fold): boolean {
  const isTab = (tab: string, to: string): boolean => {
    const host = to === one ? other : to === other ? one : undefined;
    const fold = host === undefined ? undefined : foldBetween(net, tab, host);
    return fold !== undefined && turn(fold) === turn(bottom);
  };
  return net.glue.some(({ from, to }) => isTab(from, to) || isTab(to, from));
}

/** Whether what hangs on a panel by a fold is stuck to something. */
function isOfStuck(net: Net, panel: string, fold: Fold): boolean {
  const other = otherSide(fold, panel);
  return other !== undefined && foldsOf(net, other).length === 1 && isStuck(net, other);
}

/** Two pockets of a folder on two sides of it. */
function pocketsApart(net: Net): FlatWay[] {
  return twinFlaps(net).flatMap(([one, other]) => {
    const arePockets = one.on !== other.on && isOneLine(one.fold, other.fold);
    return arePockets && turn(one.fold) !== turn(other.fold)
      ? [{ panel: one.panel, fold: one.fold, others: [other.panel] }]
      : [];
  });
}

function turn(fold: Fold): number {
  return Math.sign(signedAngle(fold));
}
