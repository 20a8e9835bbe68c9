import type { Length } from '../../measure/length.ts';
import type { Fold, Net } from '../net.ts';
import { foldsOf, otherSide } from '../panel-tree.ts';
import { areFacing, isFlatOn, lineOf, reachFrom } from '../tube.ts';
import { isRolled } from './roll.ts';
import { tolerance } from './tolerance.ts';

/** A flap that is folded flat on the panel it hangs on. */
export type FlatFlap = { readonly panel: string; readonly on: string; readonly fold: Fold };

/** One that reaches further than what it lies on. */
type OverhangingFlap = FlatFlap & { readonly depth: Length; readonly across: Length };

/**
 * Flaps that stick out past the other side of what they lie on. What is stuck to a panel makes it the back of a pocket,
 * which is longer than its front; and the leaf of a card may be so meant where nothing is folded in from that side.
 */
export function overhangingFlaps(net: Net, caliper: Length): readonly OverhangingFlap[] {
  return flatFlaps(net).flatMap(({ panel, on, fold }) => {
    if (lineOf(fold) === 'slanted' || net.glue.some(({ to }) => to === panel)) return [];
    if (net.glue.length === 0 && (!hasFacingFlap(net, on, fold) || isRolled(net, fold))) return [];
    const depth = reachFrom(lineOf(fold), net, panel);
    const across = reachFrom(lineOf(fold), net, on);
    return depth.minus(across).greaterThan(tolerance(caliper)) ? [{ panel, on, fold, depth, across }] : [];
  });
}

/** Every flap that is folded flat on the panel it hangs on, by its only fold. */
export function flatFlaps(net: Net): readonly FlatFlap[] {
  return net.panels.flatMap(({ id: panel }) => {
    const [fold, ...others] = foldsOf(net, panel);
    const on = fold && otherSide(fold, panel);
    if (!fold || on === undefined || others.length > 0) return [];
    return isFlatOn(fold) ? [{ panel, on, fold }] : [];
  });
}

/** Whether a panel is folded in from its other side too, the same way. */
function hasFacingFlap(net: Net, panel: string, fold: Fold): boolean {
  return foldsOf(net, panel).some((other) => areFacing(other, fold) && other.direction === fold.direction);
}
