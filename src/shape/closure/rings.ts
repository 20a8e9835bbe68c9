import { type FoldedShape, foldedPanelOf } from '../folded-shape.ts';
import type { Fold } from '../net.ts';
import { panelForest } from '../panel-tree.ts';
import { distance } from '../space.ts';

/**
 * Folds that close a ring of panels and are torn open when the rest is folded: somewhere in the ring a cut is
 * missing. A ring that meets again (a sheet folded in half and in half again) is none.
 */
export function brokenRings(shape: FoldedShape): readonly Fold[] {
  const { rings } = panelForest(shape.net, shape.base);
  return rings.filter((fold) => {
    const [first, second] = fold.panels.map((id) => foldedPanelOf(shape, id));
    if (!first || !second) return false;
    return [fold.from, fold.to].some((end) => distance(first.place(end), second.place(end)) > 0.01);
  });
}
