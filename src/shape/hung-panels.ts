import type { Point2 } from './flat-polygon.ts';
import type { FlatPoint, Fold, Net, Panel } from './net.ts';
import type { Hinge } from './paint/pose.ts';
import { panelForest, panelOf } from './panel-tree.ts';
import { signedAngle } from './tube.ts';

/** A panel and the fold it hangs by; one that stays put has none. */
export type HungPanel = { readonly panel: Panel; readonly fold?: Fold; readonly hinge?: Hinge };

/** The panels of a net as they hang on `base`, and on one another: each after the one it hangs on. */
export function hungPanels(net: Net, base: string): readonly HungPanel[] {
  const index = new Map<string, number>();
  const hung: HungPanel[] = [];
  const hang = (id: string, by?: Pick<HungPanel, 'fold' | 'hinge'>): void => {
    index.set(id, hung.length);
    hung.push({ panel: panelOf(net, id), ...by });
  };
  for (const { root, joints } of panelForest(net, base).trees) {
    hang(root);
    for (const { fold, parent, child } of joints) {
      const line = lineOf(panelOf(net, child), fold);
      hang(child, { fold, hinge: { on: index.get(parent) ?? 0, line, angle: signedAngle(fold) } });
    }
  }
  return hung;
}

/** A fold from that end from which the panel lies to its right. */
function lineOf({ outline }: Panel, fold: Fold): Hinge['line'] {
  const [from, to] = [upright(fold.from), upright(fold.to)];
  const side = outline
    .map(upright)
    .reduce((sum, { x, y }) => sum + (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x), 0);
  return side <= 0 ? [from.x, from.y, to.x, to.y] : [to.x, to.y, from.x, from.y];
}

/** From the top down, as nets are measured, to y up. */
export function upright({ x, y }: FlatPoint): Point2 {
  return { x: x.mm, y: -y.mm };
}
