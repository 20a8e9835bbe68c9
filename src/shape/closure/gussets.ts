import { Length } from '../../measure/length.ts';
import type { Fold, Net } from '../net.ts';
import { foldBetween } from '../panel-tree.ts';
import { reachFrom, signedAngle, type Tube, tubesOf } from '../tube.ts';
import { isSquare } from './seam.ts';
import { tolerance } from './tolerance.ts';

/** The crease down one side of a bag, and the halves it parts, whose widths differ. */
export type OffCrease = {
  readonly fold: Fold;
  readonly halves: readonly [string, string];
  readonly widths: readonly [Length, Length];
};

/** Beyond this a score in a side is no gusset's. Common practice, no source: nobody misreads a board by more than two grooves. */
const FARTHEST: Length = Length.of(1, 4, 'in');

/**
 * The creases of gussets that do not lie in the middle of their sides. A gusset is a side of a square tube scored once
 * and left flat, with another that faces it: pushed in there, front and back come to lie on each other only if each
 * side is halved.
 */
export function creasesOffMiddle(net: Net, caliper: Length): readonly OffCrease[] {
  const creases = tubesOf(net)
    .filter(isSquare)
    .flatMap((tube) => gussetCreases(net, tube));
  return creases.filter(({ widths: [a, b] }) => {
    const by = a.minus(b).abs();
    return by.greaterThan(tolerance(caliper)) && !by.half().greaterThan(FARTHEST);
  });
}

/** Of sides 0 and 2, which face each other, and of 1 and 3. */
function gussetCreases(net: Net, tube: Tube): OffCrease[] {
  return [0, 1].flatMap((side) => {
    const facing = [side, side + 2].flatMap((each) => creaseOf(net, tube, each) ?? []);
    return facing.length === 2 ? facing : [];
  });
}

function creaseOf(net: Net, { sides, lines }: Tube, side: number): OffCrease | undefined {
  const [first, second, ...others] = sides[side] ?? [];
  if (first === undefined || second === undefined || others.length > 0) return undefined;
  const fold = foldBetween(net, first, second);
  const widths = [reachFrom(lines, net, first), reachFrom(lines, net, second)] as const;
  return fold && signedAngle(fold) === 0 ? { fold, halves: [first, second], widths } : undefined;
}
