import { overlapOf } from '../../shape/closure/overlap.ts';
import { type FoldedShape, foldedPanelOf, foldNet } from '../../shape/fold.ts';
import { foldSteps, progressAt } from '../../shape/fold-order.ts';
import type { Net } from '../../shape/net.ts';
import { Stacking } from '../../shape/view/stacking.ts';

/** Two panels, by index, that come to lie on one another: 1 when the second is on the first's outer side, else -1. */
export type StackedPair = readonly [first: number, second: number, side: 1 | -1];

/** Square millimetres; what overlaps less only touches. */
const TOUCHING = 0.5;

/**
 * Every two panels that lie on one another after some step of the folding, and which of them is the outer one. Panels
 * lie on one another for longer than a moment only where a step has brought them there.
 */
export function stackedPairs(net: Net, caliper: number, ids: readonly string[]): readonly StackedPair[] {
  const { length: count } = foldSteps(net);
  const found = new Map<string, StackedPair>();
  for (let step = 1; step <= count; step += 1) {
    const shape = foldNet(net, { at: progressAt(net, step / count), caliper });
    for (const pair of pairsIn(shape, ids)) found.set(`${pair[0]} ${pair[1]}`, pair);
  }
  return [...found.values()];
}

function pairsIn(shape: FoldedShape, ids: readonly string[]): StackedPair[] {
  const stacking = new Stacking(shape);
  const panels = ids.map((id) => foldedPanelOf(shape, id));
  return panels.flatMap((first, index) =>
    panels.slice(index + 1).flatMap((second, further): StackedPair[] => {
      if (!stacking.lieTogether(first, second)) return [];
      if (overlapOf(first, second).area < TOUCHING) return [];
      return [[index, index + 1 + further, stacking.sideOf(first, second)]];
    }),
  );
}
