import { Length } from '../../measure/length.ts';
import type { Fold, Net } from '../net.ts';
import { foldsOf, otherSide } from '../panel-tree.ts';
import { isFlatOn, lineOf, positionOf, reachFrom } from '../tube.ts';
import { isRolled } from './roll.ts';
import { nearlyEqual, tolerance } from './tolerance.ts';

/**
 * Panels folded flat on each other that nearly end together, but not quite: two leaves of which the first is narrower by
 * a little, or two gates on one base that nearly meet, `by` the gap, negative where they lie over each other.
 */
export type UnevenFold = {
  readonly kind: 'leaves' | 'gates';
  readonly panels: readonly [string, string];
  readonly by: Length;
  readonly fold: Fold;
};

/** A difference beyond this is meant. Common practice, no source: nobody misreads a score board by more than two grooves. */
const SLIP: Length = Length.of(1, 4, 'in');

/** Where a card shows an edge or a gap, once it is folded flat, so small that it looks like a slip. */
export function unevenFolds(net: Net, caliper: Length): readonly UnevenFold[] {
  const isSlip = ({ by }: UnevenFold): boolean =>
    by.abs().greaterThan(tolerance(caliper)) && !by.abs().greaterThan(SLIP);
  const isCard = net.glue.length === 0 && net.folds.every(isFlatOn);
  const paired = isCard ? gates(net).filter(({ by }) => !by.abs().greaterThan(SLIP)) : [];
  const isGate = (fold: Fold): boolean =>
    paired.some(({ panels }) => panels.some((panel) => fold.panels.includes(panel)));
  const folds = isCard ? net.folds.filter((fold) => !isGate(fold) && !isRolled(net, fold)) : spines(net);
  // A line that is off makes leaves on both sides of it differ, and most where it is.
  const [leaf] = folds
    .map((fold) => leavesOf(net, fold))
    .filter(isSlip)
    .toSorted((a, b) => b.by.compare(a.by));
  return [...(leaf ? [leaf] : []), ...paired.filter(isSlip)];
}

/** The fold of a standing card, or of a folder with pockets: the only line that is scored its way. */
export function spines({ folds }: Net): Fold[] {
  return folds.filter((fold) => folds.every((each) => each === fold || lineOf(each) !== lineOf(fold)));
}

function leavesOf(net: Net, fold: Fold): UnevenFold {
  const [first, second] = fold.panels;
  const by = reachFrom(lineOf(fold), net, second).minus(reachFrom(lineOf(fold), net, first));
  return by.sign < 0
    ? { kind: 'leaves', panels: [second, first], by: by.abs(), fold }
    : { kind: 'leaves', panels: [first, second], by, fold };
}

/** Two flaps that would meet over the panel they hang on, and the fold of the second, which is a valley. */
export type GatePair = {
  readonly panels: readonly [string, string];
  readonly base: string;
  readonly fold: Fold;
};

/** Gates of half a card each that are folded to different sides of it. */
export function gatesApart(net: Net, caliper: Length): readonly GatePair[] {
  if (net.glue.length > 0 || !net.folds.every(isFlatOn)) return [];
  return net.panels.flatMap(({ id: base }): GatePair[] => {
    const own = foldsOf(net, base);
    const one = own.find(({ direction }) => direction === 'mountain');
    const other = own.find(({ direction }) => direction === 'valley');
    if (!one || !other || own.length > 2) return [];
    const [first, second] = [otherSide(one, base), otherSide(other, base)];
    if (first === undefined || second === undefined || lineOf(one) !== lineOf(other)) return [];
    const half = reachFrom(lineOf(one), net, base).half();
    const areGates = [first, second].every((panel) => {
      return (
        foldsOf(net, panel).length === 1 && nearlyEqual(reachFrom(lineOf(one), net, panel), half, caliper)
      );
    });
    return areGates ? [{ panels: [first, second], base, fold: other }] : [];
  });
}

function gates(net: Net): UnevenFold[] {
  return net.panels.flatMap(({ id }) => {
    const own = net.folds.filter(({ panels }) => panels.includes(id));
    return own.flatMap((first, index) =>
      own.slice(index + 1).flatMap((second) => gatePair(net, id, first, second)),
    );
  });
}

/** Two flaps on facing edges of one panel, folded the same way. */
function gatePair(net: Net, base: string, first: Fold, second: Fold): UnevenFold[] {
  const face = lineOf(first) === lineOf(second) && !positionOf(first).equals(positionOf(second));
  const [one, other] = [otherSide(first, base), otherSide(second, base)];
  if (!face || first.direction !== second.direction || one === undefined || other === undefined) return [];
  const by = reachFrom(lineOf(first), net, base)
    .minus(reachFrom(lineOf(first), net, one))
    .minus(reachFrom(lineOf(second), net, other));
  return [{ kind: 'gates', panels: [one, other], by, fold: second }];
}
