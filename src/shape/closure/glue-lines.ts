import { type FoldedShape, foldedPanelOf } from '../folded-shape.ts';
import { foldBetween } from '../panel-tree.ts';
import { loosePanels } from './motion.ts';
import { overlapOf } from './overlap.ts';
import { touchOf } from './touch.ts';

/** A glue mark to be made: what is stuck, and to what. */
export type Glued = { readonly from: string; readonly to: string };

/**
 * Marks that would hold panels which are loose, each between two that lie on each other, the widest first; as many
 * times as it takes, and no more than help. Where nothing lies on anything, none.
 */
export function glueFor(shape: FoldedShape, panels: readonly string[], allowed: number): readonly Glued[] {
  const places = placesFor(shape, panels, allowed);
  const glue: Glued[] = [];
  for (;;) {
    const stuck = { ...shape, net: { ...shape.net, glue: [...shape.net.glue, ...glue] } };
    const loose = loosePanels(stuck);
    const left = places.filter(({ from, to }) => {
      const helps = (panel: string): boolean => loose.has(panel) && panels.includes(panel);
      return (helps(from) || helps(to)) && !glue.some((each) => each.from === from);
    });
    const known = left.filter(({ to }) => stuck.net.glue.some((each) => each.to === to));
    const [next] = (known.length > 0 ? known : left).toSorted(
      (a, b) => Math.round(b.area) - Math.round(a.area),
    );
    if (!next) return glue.toSorted((a, b) => panels.indexOf(a.from) - panels.indexOf(b.from));
    glue.push({ from: next.from, to: next.to });
  }
}

type GluePlace = Glued & { readonly area: number };

function placesFor(shape: FoldedShape, panels: readonly string[], allowed: number): GluePlace[] {
  const seen = new Set<string>();
  return panels.flatMap((first) =>
    shape.net.panels.flatMap(({ id: second }): GluePlace[] => {
      const key = [first, second].toSorted().join('|');
      if (first === second || seen.has(key) || foldBetween(shape.net, first, second)) return [];
      seen.add(key);
      if (touchOf(shape, [first, second], allowed) !== 'face') return [];
      const [one, other] = [foldedPanelOf(shape, first), foldedPanelOf(shape, second)];
      const { area } = overlapOf(one, other);
      const [a, b] = [overlapOf(one, one).area, overlapOf(other, other).area];
      const isSmaller = a < b + 1e-6;
      return [isSmaller ? { from: first, to: second, area } : { from: second, to: first, area }];
    }),
  );
}
