import { boxSize, type Net, type Panel } from './net.ts';
import { panelOf } from './panel-tree.ts';
import { tubesOf } from './tube.ts';

/** How the folded shape is set down: its base's outside towards the viewer, or under it on the table. */
export type Rest = { readonly base: string; readonly lies: 'facing' | 'under' };

/** A wall stands up from its base at an angle near a right one. */
const WALL_ANGLES: readonly [number, number] = [45, 135];

/**
 * The panel that stays put while the others fold, and how it lies. A tube stands with its panel named `front`, else
 * its largest wall, towards the viewer; a tray lies on the panel most walls rise from; anything else faces the viewer
 * with its best-connected panel.
 */
export function restOf(net: Net): Rest {
  const walls = tubesOf(net)[0]?.walls;
  if (walls)
    return {
      base: best(
        net,
        walls.map((id) => panelOf(net, id)),
        [isFront, area],
      ),
      lies: 'facing',
    };
  const base = best(net, net.panels, [degree, isFront, area]);
  return { base, lies: risingWalls(net, base) >= 3 ? 'under' : 'facing' };
}

type Merit = (panel: Panel, net: Net) => number;

/** The panel with the most of the first merit; of several the one with the most of the second, and so on. */
function best(net: Net, panels: readonly Panel[], merits: readonly Merit[]): string {
  const better = (a: Panel, b: Panel): boolean => {
    for (const merit of merits) {
      const difference = merit(a, net) - merit(b, net);
      if (Math.abs(difference) > 1e-9) return difference > 0;
    }
    return false;
  };
  const [first, ...rest] = panels;
  if (!first) throw new Error('a net without panels has no base');
  return rest.reduce((found, each) => (better(each, found) ? each : found), first).id;
}

const isFront: Merit = ({ name }) => (name === 'front' ? 1 : 0);
const area: Merit = ({ box }) => boxSize(box).width.mm * boxSize(box).height.mm;
const degree: Merit = ({ id }, net) => net.folds.filter(({ panels }) => panels.includes(id)).length;

function risingWalls(net: Net, base: string): number {
  const [least, most] = WALL_ANGLES;
  return net.folds.filter(
    ({ panels, direction, angle }) =>
      panels.includes(base) && direction === 'mountain' && angle >= least && angle <= most,
  ).length;
}
