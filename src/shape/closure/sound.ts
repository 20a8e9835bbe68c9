import type { Length } from '../../measure/length.ts';
import { foldNet } from '../fold.ts';
import { type FoldedShape, foldedPanelOf } from '../folded-shape.ts';
import type { FlatPoint, Fold, Net } from '../net.ts';
import { panelForest } from '../panel-tree.ts';
import { perNet } from '../per-net.ts';
import { distance } from '../space.ts';
import { tubesOf } from '../tube.ts';
import { seamFit } from './seam.ts';

/** What tells a torn corner from the sums of a computer, in millimetres. */
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
function brokenRings(shape: FoldedShape): readonly Fold[] {
  const { rings } = panelForest(shape.net, shape.base);
  return rings.filter((fold) => [fold.from, fold.to].some((end) => gapAt(shape, fold, end) > LEAST_GAP));
}

/** How far one end of a fold is from itself on its two panels, in millimetres. */
function gapAt(shape: FoldedShape, { panels }: Fold, end: FlatPoint): number {
  const [first, second] = panels.map((id) => foldedPanelOf(shape, id));
  return first && second ? distance(first.place(end), second.place(end)) : 0;
}

/**
 * Where cuts are missing: at every crossing of score lines that is torn, the line between two panels that are to be stuck
 * to each other, else one between two that are neither base nor walls of a tube, for between its walls a box folds; the
 * line that closes the ring where there is none such.
 */
export function tornFolds(shape: FoldedShape): readonly Fold[] {
  const { net, base } = shape;
  const walls = new Set([base, ...tubesOf(net).flatMap((tube) => tube.walls)]);
  const isFree = ({ panels }: Fold): boolean => !panels.some((panel) => walls.has(panel));
  const areMates = ({ panels }: Fold): boolean =>
    net.glue.some(({ from, to }) => panels.includes(from) && panels.includes(to));
  const torn = brokenRings(shape).flatMap((ring) => {
    const crossings = [ring.from, ring.to]
      .map((end) => foldsAt(net, end))
      .filter((each) => each.length === 4);
    const cuts = crossings.map((round) => round.find(areMates) ?? [ring, ...round].find(isFree) ?? ring);
    return cuts.length > 0 ? cuts : [ring];
  });
  return [...new Set(torn)];
}

function foldsAt({ folds }: Net, { x, y }: FlatPoint): readonly Fold[] {
  return folds.filter(({ from, to }) => [from, to].some((end) => end.x.equals(x) && end.y.equals(y)));
}
