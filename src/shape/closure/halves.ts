import { Length } from '../../measure/length.ts';
import type { Fold, Net } from '../net.ts';
import { pairsOf } from '../pairs.ts';
import { foldsOf, otherSide } from '../panel-tree.ts';
import { perNet } from '../per-net.ts';
import { areFacing, isFlatOn, lineOf, reachFrom } from '../tube.ts';
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

/** Two flaps on facing edges of one panel, and the fold of the second. */
export type GatePair = {
  readonly panels: readonly [string, string];
  readonly base: string;
  readonly fold: Fold;
};

/**
 * Gates of half a card each of which only the first is folded flat, or that are folded to different sides of it: then
 * the second by a valley.
 */
export function gatesApart(net: Net, caliper: Length): readonly GatePair[] {
  if (net.glue.length > 0) return [];
  return gatePairs(net).flatMap(({ other, ...pair }): GatePair[] => {
    const { panels, base, fold } = pair;
    const half = reachFrom(lineOf(fold), net, base).half();
    const areGates = panels.every(
      (panel) =>
        foldsOf(net, panel).length === 1 && nearlyEqual(reachFrom(lineOf(fold), net, panel), half, caliper),
    );
    if (!areGates || foldsOf(net, base).length > 2) return [];
    const astray = astrayOf(other, fold);
    const [first, second] = panels;
    return astray ? [astray === fold ? pair : { base, panels: [second, first], fold: other }] : [];
  });
}

/** Which of the folds of two gates does not go as the other does; a line that is left flat does on purpose. */
function astrayOf(one: Fold, other: Fold): Fold | undefined {
  const [first, second] = [one, other].map(isFlatOn);
  if (one.direction === 'flat' || other.direction === 'flat') return undefined;
  if (first !== second) return first ? other : one;
  if (!first || one.direction === other.direction) return undefined;
  return other.direction === 'valley' ? other : one;
}

/** Two that are folded the same way, and what they leave between them. */
function gates(net: Net): UnevenFold[] {
  return gatePairs(net).flatMap(({ panels, base, fold, other }) => {
    if (fold.direction !== other.direction) return [];
    const [room, ...reaches] = [base, ...panels].map((panel) => reachFrom(lineOf(fold), net, panel));
    const by = (room ?? Length.zero).minus(Length.sum(reaches));
    return [{ kind: 'gates', panels, by, fold }];
  });
}

/** Every two flaps on facing edges of one panel, with the fold of the first too. */
export const gatePairs: (net: Net) => readonly (GatePair & { readonly other: Fold })[] = perNet(
  (net: Net) => {
    return net.panels.flatMap(({ id: base }) =>
      pairsOf(foldsOf(net, base)).flatMap(([other, fold]) => {
        const [first, second] = [otherSide(other, base), otherSide(fold, base)];
        if (first === undefined || second === undefined || !areFacing(other, fold)) return [];
        return [{ panels: [first, second] as const, base, fold, other }];
      }),
    );
  },
);
