import type { Net, Panel, PopUp } from './net.ts';
import { boxArea } from './panel-area.ts';
import { foldsOf, panelOf } from './panel-tree.ts';
import { isFlatOn, signedAngle, tubesOf } from './tube.ts';

/**
 * Which way the outside of the base looks: to the viewer, away from them, down on the table, or up. What is `raised` looks
 * away too, with its upper edge down, as the front of a card does that is opened upward.
 */
type Lie = 'facing' | 'away' | 'raised' | 'under' | 'over';

/** How the folded shape is set down. */
export type Rest = { readonly base: string; readonly lies: Lie };

/** A wall stands up from its base at an angle near a right one. */
const WALL_ANGLES: readonly [number, number] = [45, 135];

/**
 * The panel that stays put while the others fold, and how it lies. A tube stands with its front to the viewer,
 * else lies on what is under, else turns its largest wall to the viewer. A tray lies on the panel most walls rise from, a
 * lid under its top. A card with a pop-up shows its inside. A zigzag hangs on its first panel; anything else on its best-connected one, an envelope with its
 * flaps to the viewer.
 */
export function restOf(net: Net): Rest {
  const [popUp] = net.popUps ?? [];
  if (popUp) return opened(net, popUp);
  const walls = tubesOf(net)[0]?.walls.map((id) => panelOf(net, id));
  if (walls) {
    const known = walls.find(({ role }) => role === 'front') ?? walls.find(({ role }) => role === 'under');
    const base = known ?? best(net, walls, [area]);
    return { base: base.id, lies: base.role === 'under' ? 'under' : 'facing' };
  }
  const base = isZigzag(net) ? zigzagEnd(net) : best(net, net.panels, [degree, area, isFront]);
  const isTray = risingWalls(net, base) >= 3;
  if (isTray) return { base: base.id, lies: base.role === 'over' ? 'over' : 'under' };
  return { base: base.id, lies: base.role === 'back' || isPouch(net) ? 'away' : 'facing' };
}

/** A card with a pop-up as one sees it on opening: with a fold across, its front stands up; with an upright one, like a book. */
function opened(net: Net, { panels, isUpright }: PopUp): Rest {
  const [front] = panels.filter((id) => panelOf(net, id).role === 'front');
  const [base] = panels.filter((id) => id !== front);
  if (!isUpright && front !== undefined) return { base: front, lies: 'raised' };
  return { base: base ?? panels[0], lies: 'away' };
}

type Merit = (panel: Panel, net: Net) => number;

/** The panel with the most of the first merit; of several the one with the most of the second, and so on. */
function best(net: Net, panels: readonly Panel[], merits: readonly Merit[]): Panel {
  const better = (a: Panel, b: Panel): boolean => {
    for (const merit of merits) {
      const difference = merit(a, net) - merit(b, net);
      if (Math.abs(difference) > 1e-9) return difference > 0;
    }
    return false;
  };
  const [first, ...rest] = panels;
  if (!first) throw new Error('a net without panels has no base');
  return rest.reduce((found, each) => (better(each, found) ? each : found), first);
}

const isFront: Merit = ({ role }) => (role === 'front' ? 1 : 0);
const area: Merit = ({ box }) => boxArea(box);
const degree: Merit = (panel, net) => foldsOf(net, panel.id).length;

function risingWalls(net: Net, base: Panel): number {
  const [least, most] = WALL_ANGLES;
  return foldsOf(net, base.id).filter(
    ({ direction, angle }) => direction === 'mountain' && angle >= least && angle <= most,
  ).length;
}

/** Folded flat this way and that, as an accordion is. */
function isZigzag(net: Net): boolean {
  const ways = new Set(net.folds.map((fold) => Math.sign(signedAngle(fold))));
  return net.folds.every(isFlatOn) && ways.size > 1;
}

/** Folded flat and stuck, as an envelope is: its flaps are what one knows it by, so they are turned to the viewer. */
function isPouch({ folds, glue }: Net): boolean {
  return glue.length > 0 && folds.every(isFlatOn);
}

/** The first panel that hangs by one fold only. */
function zigzagEnd(net: Net): Panel {
  const end = net.panels.find((panel) => foldsOf(net, panel.id).length === 1);
  return end ?? best(net, net.panels, [degree]);
}
