import { boxSize, type Fold, type Mate, type Net } from '../net.ts';
import { pairsOf } from '../pairs.ts';
import { boxArea } from '../panel-area.ts';
import { foldBetween, foldsOf, isStuck, otherSide, panelOf } from '../panel-tree.ts';
import { perNet } from '../per-net.ts';
import { areFacing, comesRound, isFlatOn, isOneLine, lineOf, reachFrom } from '../tube.ts';
import { type FlatFlap, flatFlaps } from './flat-flaps.ts';
import { WIDEST_TAB } from './seam.ts';

/** Two flaps as like as the side flaps of an envelope, or the pockets of a folder. */
type Twins = readonly [FlatFlap, FlatFlap];

/** Flat flaps of one size that hang on facing edges of one panel, or about one score line on two. */
export function twinFlaps(net: Net): readonly Twins[] {
  const flaps = flatFlaps(net).filter(({ fold }) => lineOf(fold) !== 'slanted');
  const pairs = pairsOf(flaps);
  const twins = pairs.filter(([first, second]) => areTwins(net, first, second));
  const onTwins = pairs.filter(([first, second]) => areTabsOfTwins(net, first, second));
  return [...twins, ...onTwins];
}

/** Whether flaps are each the outer tab of one of two pockets that are like one another. */
function areTabsOfTwins(net: Net, first: FlatFlap, second: FlatFlap): boolean {
  const [one, other] = [first, second].map(({ panel, on }) =>
    foldsOf(net, on).find((fold) => !fold.panels.includes(panel)),
  );
  const isFolded = one && other && lineOf(one) !== lineOf(first.fold) && isFlatOn(one) && isFlatOn(other);
  if (!isFolded || first.on === second.on || lineOf(first.fold) !== lineOf(second.fold)) return false;
  const areFacingOut = !isOneLine(first.fold, second.fold) && areOfOneSize(net, first.on, second.on);
  return areFacingOut && isOneLine(one, other) && areOfOneSize(net, first.panel, second.panel);
}

function areOfOneSize(net: Net, first: string, second: string): boolean {
  const [one, other] = [first, second].map((panel) => boxSize(panelOf(net, panel).box));
  return !!one && !!other && one.width.equals(other.width) && one.height.equals(other.height);
}

function areTwins(net: Net, first: FlatFlap, second: FlatFlap): boolean {
  if (first.fold === second.fold || lineOf(first.fold) !== lineOf(second.fold)) return false;
  return (
    isOneLine(first.fold, second.fold) !== (first.on === second.on) &&
    areOfOneSize(net, first.panel, second.panel)
  );
}

/** A flap that is stuck to nothing or where it joins nothing, and the mark that says so. */
export type LeftOut = {
  readonly panel: string;
  /** What it is stuck to, if to anything; whether it hangs on that. */
  readonly to?: string;
  readonly hangsThere: boolean;
  /** The sheet that it lies on as well, where it is stuck to the flap that closes that one. */
  readonly instead?: string;
  /** The flap like it, and what that is stuck to. */
  readonly twin?: { readonly panel: string; readonly to: string };
  readonly mate?: Mate;
};

/** Flat flaps whose twins are stuck to something else, corners that are not stuck as the others are, tabs that join nothing. */
export const leftOutFlaps: (net: Net) => readonly LeftOut[] = perNet((net: Net) => {
  const unlike = twinFlaps(net).flatMap(([one, other]) => {
    // Of two that are stuck to different panels, the one on the smaller is astray.
    const [first] = [...unlikeTwin(net, one, other), ...unlikeTwin(net, other, one)].toSorted(
      (a, b) => areaOf(net, b.twin?.to) - areaOf(net, a.twin?.to),
    );
    return first ? [first] : [];
  });
  const tabs = flatFlaps(net).filter(
    ({ panel, fold }) =>
      comesRound(net, panel) &&
      !reachFrom(lineOf(fold), net, panel).greaterThan(WIDEST_TAB) &&
      !unlike.some((each) => each.panel === panel),
  );
  return [
    ...unlike,
    ...unlikeCorners(net),
    ...onClosingFlap(net),
    ...tabs.flatMap(({ panel, on }): LeftOut[] => {
      const [stuck, ...others] = stuckTo(net, panel);
      const joinsNothing = stuck?.to === on && others.length === 0;
      return joinsNothing ? [{ panel, hangsThere: true, ...stuck }] : [];
    }),
  ];
});

/**
 * Twins on one panel are stuck to one thing, or to one another. Those on two may be stuck each to its own, or each to the panel it hangs on,
 * as pockets are.
 */
function unlikeTwin(net: Net, { panel, on, fold }: FlatFlap, other: FlatFlap): LeftOut[] {
  const own = stuckTo(net, panel);
  const [theirs] = stuckTo(net, other.panel);
  const isOnTwin = own.some(({ to }) => to === other.panel);
  if (!theirs || isOnTwin || net.opens?.includes(panel)) return [];
  const twin = { panel: other.panel, to: theirs.to };
  const [stuck] = own;
  if (!stuck)
    return isClosing(net, panel, on) || isLeaf(net, fold) ? [] : [{ panel, hangsThere: false, twin }];
  if (theirs.to === panel) return [];
  if (theirs.to === other.on || own.some(({ to }) => to === theirs.to)) return [];
  const hangsThere = own.every(({ to }) => to === on);
  return hangsThere || on === other.on ? [{ panel, hangsThere, twin, ...stuck }] : [];
}

/** Tabs of one sheet of a pocket that are stuck to the flap at the mouth of the other, and not to that: nothing closes it. */
function onClosingFlap(net: Net): LeftOut[] {
  const flaps = flatFlaps(net);
  const isFlap = ({ panel, fold }: FlatFlap): boolean =>
    reachFrom(lineOf(fold), net, panel).greaterThan(WIDEST_TAB);
  return net.glue.flatMap((mate): LeftOut[] => {
    const tab = flaps.find(({ panel }) => panel === mate.from);
    const flap = flaps.find(({ panel }) => panel === mate.to);
    if (!tab || !flap || !isFlap(flap)) return [];
    const fold = foldBetween(net, tab.on, flap.on);
    const isFacing =
      fold && isFlatOn(fold) && areFacing(fold, flap.fold) && lineOf(tab.fold) !== lineOf(fold);
    if (!isFacing || stuckTo(net, tab.panel).some(({ to }) => to === flap.on)) return [];
    return [{ panel: tab.panel, to: flap.panel, hangsThere: false, instead: flap.on, mate }];
  });
}

/** Of a corner folded in on a slanted line, the half that lies on the wall it hangs on. */
type FoldedCorner = { readonly panel: string; readonly wall: string };

/** Every corner that is folded in and stuck to nothing. */
export function freeCorners(net: Net): readonly FoldedCorner[] {
  return foldedCorners(net).flatMap(({ panels, ...corner }) =>
    panels.some((panel) => isStuck(net, panel) || net.opens?.includes(panel)) ? [] : [corner],
  );
}

const foldedCorners: (net: Net) => readonly (FoldedCorner & Pick<Fold, 'panels'>)[] = perNet((net: Net) => {
  const inTwo = net.folds.filter((fold) => lineOf(fold) === 'slanted' && isFlatOn(fold));
  return inTwo.flatMap(({ panels }) =>
    panels.flatMap((panel) => {
      const hinge = foldsOf(net, panel).find((fold) => lineOf(fold) !== 'slanted' && isFlatOn(fold));
      const wall = hinge && otherSide(hinge, panel);
      return wall === undefined ? [] : [{ panel, wall, panels }];
    }),
  );
});

/** Corners that are stuck to nothing, where one of their size is stuck. */
function unlikeCorners(net: Net): LeftOut[] {
  return freeCorners(net).flatMap(({ panel }): LeftOut[] => {
    const [twin] = foldedCorners(net).flatMap((other) => {
      const isAlike = Math.abs(areaOf(net, other.panel) - areaOf(net, panel)) < 1;
      return isAlike ? stuckTo(net, other.panel).map(({ to }) => ({ panel: other.panel, to })) : [];
    });
    return twin ? [{ panel, hangsThere: false, twin }] : [];
  });
}

/** Whether the two panels of a fold are equally wide: leaves of a card, which may stay free. */
function isLeaf(net: Net, fold: Fold): boolean {
  const [one, other] = fold.panels.map((panel) => reachFrom(lineOf(fold), net, panel));
  return !!one && !!other && one.equals(other);
}

function areaOf(net: Net, panel: string | undefined): number {
  return panel === undefined ? 0 : boxArea(panelOf(net, panel).box);
}

/** Whether a panel is stuck, or hangs together with what is, on all sides but that of one flap, which closes it. */
function isClosing(net: Net, flap: string, on: string): boolean {
  const others = foldsOf(net, on)
    .flatMap((fold) => otherSide(fold, on) ?? [])
    .filter((each) => each !== flap);
  return others.length >= 3 && others.every((each) => stuckTo(net, each).length > 0);
}

/** What a panel is stuck to, whichever of the two is named first. */
function stuckTo({ glue }: Net, panel: string): readonly { readonly to: string; readonly mate: Mate }[] {
  return glue.flatMap((mate) => {
    if (mate.from === panel) return [{ to: mate.to, mate }];
    return mate.to === panel ? [{ to: mate.from, mate }] : [];
  });
}
