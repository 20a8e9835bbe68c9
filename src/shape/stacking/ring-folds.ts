import { foldedPanelOf } from '../folded-shape.ts';
import type { Fold, Net } from '../net.ts';
import { panelForest } from '../panel-tree.ts';
import { height } from '../space.ts';
import { isFlatOn, signedAngle } from '../tube.ts';
import type { Stack } from './stack.ts';
import { foldsOfWoundRings } from './wound-rings.ts';

/** A fold of a ring of panels, and the way in which the others of the ring take it. */
export type ReversedFold = { readonly fold: Fold; readonly taken: 'mountain' | 'valley' };

/** Degrees; what is bent by less may go either way. */
const LEAST_BENT = 5;

/** A sheet with lines right across it both ways is folded line by line, each through all that lies on it by then. */
export function isMap(net: Net): boolean {
  const [first] = net.panels;
  const rings = first ? panelForest(net, first.id).rings : [];
  return net.glue.length === 0 && net.folds.every(isFlatOn) && rings.length > 0;
}

/** Folds that close a ring of panels and are said to go the other way than the rest of the ring takes them. */
export function reversedFolds(stack: Stack): readonly ReversedFold[] {
  const { net, base } = stack.shape;
  if (isMap(net))
    return foldsOfWoundRings(net).map((fold) => ({
      fold,
      taken: fold.direction === 'valley' ? 'mountain' : 'valley',
    }));
  // What panels go through is told by itself, and leaves none of them where it would lie.
  if (stack.crossings.length > 0) return [];
  return panelForest(net, base).rings.flatMap((fold) => {
    if (Math.abs(signedAngle(fold)) < LEAST_BENT) return [];
    const taken = wayTaken(stack, fold);
    return taken === undefined || taken === fold.direction ? [] : [{ fold, taken }];
  });
}

/** A mountain leaves both outsides outside. Two panels that lie on one another are on no side by their places alone. */
function wayTaken({ shape, sides }: Stack, { panels }: Fold): ReversedFold['taken'] | undefined {
  const side = sides.of(...panels);
  if (side !== undefined) return side === 1 ? 'valley' : 'mountain';
  const [first, second] = [foldedPanelOf(shape, panels[0]), foldedPanelOf(shape, panels[1])];
  const off = second.corners.map((corner) => height(first.plane, corner));
  const outward = Math.max(0, ...off);
  const inward = Math.max(0, ...off.map((each) => -each));
  if (Math.abs(outward - inward) <= LEAST_OFF) return undefined;
  return outward > inward ? 'valley' : 'mountain';
}

/** Millimeters; a panel that rises no higher over the other's plane lies in it. */
const LEAST_OFF = 0.5;
