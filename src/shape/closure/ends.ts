import { Length } from '../../measure/length.ts';
import type { Fold, Net } from '../net.ts';
import { foldsOf, isStuck, otherSide, panelOf } from '../panel-tree.ts';
import { perNet } from '../per-net.ts';
import { lineOf, positionOf, reachFrom, signedAngle, type Tube, tubesOf } from '../tube.ts';
import { isLap, isSquare, sideWidth } from './seam.ts';
import { tolerance } from './tolerance.ts';

/** A flap that closes one end of a tube, at right angles to its wall. */
export type EndFlap = {
  /** The panel that hangs on the wall. */
  readonly panel: string;
  /** That and whatever is beyond lines of it that stay flat. */
  readonly parts: readonly string[];
  /** The side of the tube it hangs on, as an index of `sides`. */
  readonly side: number;
  readonly fold: Fold;
  /** How far it reaches from its wall. */
  readonly depth: Length;
  /** How far the facing wall is, in a square tube. */
  readonly across?: Length;
  /** The flap tucked in behind the facing wall, if it ends in one. */
  readonly tuck?: Tuck;
};

type Tuck = { readonly panel: string; readonly fold: Fold; readonly depth: Length };

/** One end of a tube. */
export type TubeEnd = {
  readonly tube: Tube;
  /** Which end, as the sheet lies flat. */
  readonly end: 'top' | 'bottom' | 'left' | 'right';
  readonly flaps: readonly EndFlap[];
  /** How far the walls run from this end to the other. */
  readonly length: Length;
};

/** A gap between (or beside) the flaps of one end that are meant to cover it. */
type EndGap = { readonly flaps: readonly EndFlap[]; readonly across: Length; readonly gap: Length };

/** A lid that is tucked in may be this much short: it must slide in. Common practice, no source. */
const TUCK_EASE: Length = Length.of(1, 16, 'in');

/** A lid more than this short of the wall is one of two that meet. Common practice, no source. */
export const HALF_LID: Length = Length.of(1, 4, 'in');

/** Both ends of every tube of a net. */
export const tubeEnds: (net: Net) => readonly TubeEnd[] = perNet((net: Net) => {
  return tubesOf(net).flatMap((tube) => {
    const ends = tube.lines === 'upright' ? (['top', 'bottom'] as const) : (['left', 'right'] as const);
    return ends.map((end) => ({ tube, end, flaps: endFlaps(net, tube, end), length: runOf(net, tube) }));
  });
});

/**
 * What stays open of a square end. Nothing where one flap reaches across or two facing ones meet, unless a lid stops a little short above them; nothing either where the
 * flaps together don't come halfway, or all are said to open: that end is meant to be open.
 */
export function endGap(net: Net, end: TubeEnd, caliper: Length): EndGap | undefined {
  const isMeant = end.flaps.every(({ panel }) => net.opens?.includes(panel));
  if (!isSquare(end.tube) || isMeant) return undefined;
  const gaps = [0, 1].map((index) => pairGap(end, index, caliper));
  // Walls that have no flap leave all of it open, and can't fix it.
  const open = gaps.filter((gap) => gap !== 'covered' && gap !== 'bare');
  if (gaps.some((gap) => gap === 'covered')) return open.find((gap) => isShortLid(net, gap));
  const [least] = open.toSorted((a, b) => a.gap.compare(b.gap));
  if (!least) return undefined;
  const isGlued = least.flaps.some((flap) => isFlapStuck(net, flap));
  return isGlued || !least.gap.greaterThan(least.across.half()) ? least : undefined;
}

/** Whether a gap is that of a lid which stops a little short above its dust flaps. With a tuck flap there is a rule for it. */
function isShortLid(net: Net, { flaps, gap }: EndGap): boolean {
  const [lid, ...others] = flaps;
  const isLid = lid && !lid.tuck && others.length === 0 && !isFlapStuck(net, lid);
  return isLid === true && !gap.greaterThan(HALF_LID);
}

/** A flap of an end in which it faces a wall. */
type FacingFlap = EndFlap & Required<Pick<EndFlap, 'across'>>;

/** Flaps that reach further than to the facing wall. */
export function longFlaps(end: TubeEnd, caliper: Length): readonly FacingFlap[] {
  return end.flaps.flatMap((flap) => {
    const { depth, across } = flap;
    return across && depth.minus(across).greaterThan(tolerance(caliper)) ? [{ ...flap, across }] : [];
  });
}

/** Lids to tuck in that stop a little short of the facing wall, whatever dust flaps there are below them. */
export function shortLids(end: TubeEnd, caliper: Length): readonly FacingFlap[] {
  return end.flaps.flatMap((flap) => {
    const { tuck, depth, across } = flap;
    const short = across?.minus(depth);
    const isShort = tuck && short?.greaterThan(tuckEase(caliper)) && !short.greaterThan(HALF_LID);
    return across && isShort ? [{ ...flap, across }] : [];
  });
}

function tuckEase(caliper: Length): Length {
  return Length.max(tolerance(caliper), TUCK_EASE);
}

/** Sides 0 and 2 of the tube face each other, and so do 1 and 3. */
function pairGap({ flaps }: TubeEnd, first: number, caliper: Length): EndGap | 'covered' | 'bare' {
  const pair = flaps.filter(({ side }) => side === first || side === first + 2);
  if (pair.length === 0) return 'bare';
  const across = pair.find((flap) => flap.across)?.across ?? Length.zero;
  const reachOf = (side: number): Length =>
    Length.max(Length.zero, ...pair.filter((flap) => flap.side === side).map(({ depth }) => depth));
  const allowed = pair.some(({ tuck }) => tuck) ? tuckEase(caliper) : tolerance(caliper);
  const gap = across.minus(reachOf(first)).minus(reachOf(first + 2));
  return gap.greaterThan(allowed) ? { flaps: pair, across, gap } : 'covered';
}

function endFlaps(net: Net, tube: Tube, end: TubeEnd['end']): EndFlap[] {
  return foldsAtEnd(net, tube, end).flatMap(({ panel, side, wall, fold }) => {
    if (!turnsIn(tube, fold)) return [];
    const across = isSquare(tube) ? { across: wayAcross(net, tube, side) } : {};
    const parts = partsOf(net, tube, panel, fold);
    const depth = Length.sum(parts.map((part) => runOf(net, tube, part)));
    const tuck = tuckOf(net, tube, parts, wall);
    return [{ panel, parts, side, fold, depth, ...across, ...(tuck && { tuck }) }];
  });
}

/** How far it is from one side of a square tube to the facing one. Where its ends overlap in a side, none is that side alone. */
function wayAcross(net: Net, tube: Tube, side: number): Length {
  const isParted = (side + 1) % 4 === 0 && isLap(net, tube);
  return sideWidth(net, tube, isParted ? 2 : side + 1);
}

/** What hangs on a wall at one end of a tube, whichever way it turns. */
type AtEnd = Pick<EndFlap, 'panel' | 'side' | 'fold'> & { readonly wall: string };

export function foldsAtEnd(net: Net, tube: Tube, end: TubeEnd['end']): readonly AtEnd[] {
  return tube.sides.flatMap((walls, side) =>
    walls.flatMap((wall) => {
      const edge = panelOf(net, wall).box[end];
      return foldsOf(net, wall).flatMap((fold) => {
        const panel = otherSide(fold, wall);
        const isThere = lineOf(fold) !== tube.lines && positionOf(fold).equals(edge);
        return isThere && panel !== undefined ? [{ panel, side, fold, wall }] : [];
      });
    }),
  );
}

/** Whether any part of a flap is stuck to something. */
export function isFlapStuck(net: Net, { parts }: EndFlap): boolean {
  return parts.some((part) => isStuck(net, part));
}

/** A panel that hangs on a fold, and those in one row with it, as far as the lines between them stay flat. */
function partsOf(net: Net, tube: Tube, panel: string, hinge: Fold): readonly string[] {
  const onward = foldsOf(net, panel).find(
    (fold) => fold !== hinge && lineOf(fold) !== tube.lines && signedAngle(fold) === 0,
  );
  const next = onward && otherSide(onward, panel);
  return onward && next !== undefined ? [panel, ...partsOf(net, tube, next, onward)] : [panel];
}

/** What is folded in at the far edge of a flap and stuck to nothing. */
function tuckOf(net: Net, tube: Tube, parts: readonly string[], wall: string): Tuck | undefined {
  return beyond(net, tube, parts, wall).find(({ fold }) => turnsIn(tube, fold));
}

/** What is folded out, and stands up, at the far edge of a lid that reaches across by itself, as one that is tucked in does. */
export function standingTucks(
  net: Net,
  { tube, flaps }: TubeEnd,
): readonly (Tuck & { readonly lid: string })[] {
  return flaps.flatMap(({ panel: lid, parts, side, depth, across, fold }) => {
    const isAlone = flaps.every((other) => other.side === side || other.side % 2 !== side % 2);
    const reaches = isAlone && across && !across.minus(depth).abs().greaterThan(HALF_LID);
    const wall = otherSide(fold, lid);
    if (!reaches || wall === undefined || parts.some((part) => isStuck(net, part))) return [];
    return beyond(net, tube, parts, wall).flatMap((tuck) =>
      signedAngle(tuck.fold) === -90 * Math.sign(tube.turn) ? [{ ...tuck, lid }] : [],
    );
  });
}

/** What hangs at the far edge of a flap and is stuck to nothing. */
function beyond(net: Net, tube: Tube, parts: readonly string[], wall: string): readonly Tuck[] {
  const last = parts.at(-1) ?? wall;
  return foldsOf(net, last).flatMap((fold) => {
    const panel = otherSide(fold, last);
    const isOn = panel !== undefined && panel !== wall && !parts.includes(panel);
    if (!isOn || lineOf(fold) === tube.lines || isStuck(net, panel)) return [];
    return [{ panel, fold, depth: runOf(net, tube, panel) }];
  });
}

/** Whether a fold turns square to the inside of the tube: the way its own walls turn. */
function turnsIn({ turn }: Tube, fold: Fold): boolean {
  return signedAngle(fold) === 90 * Math.sign(turn);
}

/** A panel's extent along the tube; of its first wall when none is named. */
function runOf(net: Net, tube: Tube, panel: string = tube.walls[0] ?? tube.tab): Length {
  return reachFrom(tube.lines === 'upright' ? 'across' : 'upright', net, panel);
}
