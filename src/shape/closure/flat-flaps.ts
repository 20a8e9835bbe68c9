import type { Length } from '../../measure/length.ts';
import type { Fold, Net } from '../net.ts';
import { foldBetween, foldsOf, isStuck, otherSide } from '../panel-tree.ts';
import { perNet } from '../per-net.ts';
import { areFacing, isFlatOn, lineOf, reachFrom } from '../tube.ts';
import { isRolled } from './roll.ts';
import { WIDEST_TAB } from './seam.ts';
import { tolerance } from './tolerance.ts';

/** A flap that is folded flat on the panel it hangs on. */
export type FlatFlap = { readonly panel: string; readonly on: string; readonly fold: Fold };

/** One that reaches further than what it lies on. */
type OverhangingFlap = FlatFlap & { readonly depth: Length; readonly across: Length };

/**
 * Flaps that stick out past the other side of what they lie on. What is stuck to a panel, or tabs on it, make it the back of a pocket,
 * which is longer than its front unless that ends in the flap of an envelope; and the leaf of a card may be so meant
 * where nothing is folded in from that side.
 */
export const overhangingFlaps: (net: Net, caliper: Length) => readonly OverhangingFlap[] = perNet(
  (net: Net, caliper: Length) => {
    return flapsWithTabs(net).flatMap(({ panel, on, fold }) => {
      if (lineOf(fold) === 'slanted') return [];
      // Tabs that are stuck to what they hang on are meant for what lies there, which is then the back of a pocket.
      if (net.glue.some(({ from, to }) => to === on && foldBetween(net, from, on))) return [];
      const facing = facingPanels(net, on, fold);
      const isBack = net.glue.some(({ to }) => to === panel) || foldsOf(net, panel).length > 1;
      if (isBack && !facing.some((each) => isWide(net, each, fold))) return [];
      // What goes on to and fro from a gusset is longer than it; where that is stuck it may stick out, which is told there.
      if (isStuck(net, panel) && isGusset(net, on, fold)) return [];
      if (net.glue.length === 0 && (facing.length === 0 || isRolled(net, fold))) return [];
      const depth = reachFrom(lineOf(fold), net, panel);
      const across = reachFrom(lineOf(fold), net, on);
      return depth.minus(across).greaterThan(tolerance(caliper)) ? [{ panel, on, fold, depth, across }] : [];
    });
  },
);

/** Every flap that is folded flat on the panel it hangs on, by its only fold. */
export const flatFlaps: (net: Net) => readonly FlatFlap[] = perNet((net: Net) => {
  return flapsWithTabs(net).filter(({ panel }) => foldsOf(net, panel).length === 1);
});

/** The same, and those that have no other folds but those of tabs at their sides. */
const flapsWithTabs: (net: Net) => readonly FlatFlap[] = perNet((net: Net) => {
  return net.panels.flatMap(({ id: panel }) => {
    const folds = foldsOf(net, panel);
    const [fold, ...others] = folds.filter((each) => folds.length === 1 || !isOfTab(net, panel, each));
    const on = fold && otherSide(fold, panel);
    if (!fold || on === undefined || others.length > 0) return [];
    const areBeside = folds.every((each) => each === fold || lineOf(each) !== lineOf(fold));
    return isFlatOn(fold) && areBeside ? [{ panel, on, fold }] : [];
  });
});

/** Whether nothing but a glue tab hangs on a panel by a fold. */
function isOfTab(net: Net, panel: string, fold: Fold): boolean {
  const tab = otherSide(fold, panel);
  return tab !== undefined && foldsOf(net, tab).length === 1 && isStuck(net, tab) && !isWide(net, tab, fold);
}

/** What is folded in on a panel from its other side, the same way. */
function facingPanels(net: Net, panel: string, fold: Fold): readonly string[] {
  return foldsOf(net, panel).flatMap((other) =>
    areFacing(other, fold) && other.direction === fold.direction ? (otherSide(other, panel) ?? []) : [],
  );
}

/** Whether a panel is folded to and fro: the line on its other side turns the other way. */
function isGusset(net: Net, panel: string, fold: Fold): boolean {
  return foldsOf(net, panel).some(
    (other) => areFacing(other, fold) && isFlatOn(other) && other.direction !== fold.direction,
  );
}

/** Whether a flap is wider than a hem, which is folded in first and lies between. */
function isWide(net: Net, panel: string, fold: Fold): boolean {
  return reachFrom(lineOf(fold), net, panel).greaterThan(WIDEST_TAB);
}
