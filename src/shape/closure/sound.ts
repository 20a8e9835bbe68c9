import type { Length } from '../../measure/length.ts';
import { foldNet } from '../fold.ts';
import { type FoldedShape, foldedPanelOf } from '../folded-shape.ts';
import type { FlatPoint, Fold, Net } from '../net.ts';
import { panelForest } from '../panel-tree.ts';
import { perNet } from '../per-net.ts';
import { distance } from '../space.ts';
import { tubesOf } from '../tube.ts';
import { seamFit } from './seam.ts';

/** What tells a torn corner from the sums of a computer, in millimeters. */
const LEAST_GAP = 0.01;

/** How far a net can be trusted: what comes later is only worth asking when what comes before holds. */
export type Soundness =
  /** Parts of the paper hang on nothing, or a ring of panels cannot fold. */
  | 'no net'
  /** It folds, but its body does not come round. */
  | 'open'
  | 'closes';

/** A net fully folded, and how far it holds. */
type Folded = { readonly shape: FoldedShape; readonly soundness: Soundness };

/** Folds a net; bent walls are glued while they lie flat, and proofed so: their strips are for looking at. */
export const folded: (net: Net, caliper: Length) => Folded = perNet((net, caliper: Length) => {
  const { strips, ...unbent } = net;
  const shape = foldNet(strips ? unbent : net, { caliper: caliper.mm });
  return { shape, soundness: soundnessOf(shape, caliper) };
});

function soundnessOf(shape: FoldedShape, caliper: Length): Soundness {
  const { trees } = panelForest(shape.net, shape.base);
  if (trees.length > 1 || brokenRings(shape).length > 0) return 'no net';
  const open = tubesOf(shape.net).some((tube) => seamFit(shape, tube, caliper).kind !== 'closes');
  return open ? 'open' : 'closes';
}

/**
 * Folds that close a ring of panels and are torn open when the rest is folded: somewhere in the ring a cut is
 * missing. A ring that meets again (a sheet folded in half and in half again) is none.
 */
export function brokenRings(shape: FoldedShape): readonly Fold[] {
  const { rings } = panelForest(shape.net, shape.base);
  return rings.filter((fold) => [fold.from, fold.to].some((end) => gapAt(shape, fold, end) > LEAST_GAP));
}

/** How far one end of a fold is from itself on its two panels, in millimeters. */
function gapAt(shape: FoldedShape, { panels }: Fold, end: FlatPoint): number {
  const [first, second] = panels.map((id) => foldedPanelOf(shape, id));
  return first && second ? distance(first.place(end), second.place(end)) : 0;
}
