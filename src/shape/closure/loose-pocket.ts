import type { Fold, Net } from '../net.ts';
import { foldsOf } from '../panel-tree.ts';
import { isFlatOn, lineOf, reachFrom } from '../tube.ts';
import { gatePairs } from './halves.ts';
import type { Holding, Unheld } from './holding.ts';
import { WIDEST_TAB } from './seam.ts';
import { tolerance } from './tolerance.ts';

/**
 * Of what is folded flat and glued nowhere: two tabs, or two flaps that overlap, folded in beside one that is folded over
 * them, as in a pocket or an envelope. Leaves and gates of a card don't lie so.
 */
export function loosePockets(holding: Holding): readonly Unheld[] {
  const { net, caliper, loose } = holding;
  const beside = gatePairs(net).flatMap(({ panels, base, fold, other }) => {
    const [one, two, room] = [...panels, base].map((panel) => reachFrom(lineOf(fold), net, panel));
    const isMeant = !panels.every((panel) => loose.has(panel));
    if (!one || !two || !room || isMeant || fold.direction !== other.direction) return [];
    const overlap = one.plus(two).minus(room);
    const areFlaps = overlap.greaterThan(tolerance(caliper)) && overlap.lessThan(room.half());
    const areTabs = [one, two].every((reach) => !reach.greaterThan(WIDEST_TAB));
    return (areFlaps || areTabs) && hasFlapAcross(net, base, fold) ? [{ panels, areFlaps }] : [];
  });
  // Where flaps overlap, the tabs across them are its foot and the flap that closes it.
  const found = beside.find(({ areFlaps }) => areFlaps) ?? beside[0];
  return found ? [{ kind: 'pocket', panels: found.panels, glue: holding.glueFor(found.panels) }] : [];
}

/** Whether something is folded over a panel from another side than a flap, the same way. */
function hasFlapAcross(net: Net, base: string, flap: Fold): boolean {
  return foldsOf(net, base).some(
    (fold) => isFlatOn(fold) && lineOf(fold) !== lineOf(flap) && fold.direction === flap.direction,
  );
}
