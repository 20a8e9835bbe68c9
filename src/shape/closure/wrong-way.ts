import { Length } from '../../measure/length.ts';
import type { Fold, Net } from '../net.ts';
import { isStuck } from '../panel-tree.ts';
import { lineOf, reachFrom, signedAngle } from '../tube.ts';
import { type EndFlap, foldsAtEnd, HALF_LID, standingTucks, type TubeEnd, tubeEnds } from './ends.ts';
import { flatWays } from './flat-ways.ts';
import { isSquare, sideWidth } from './seam.ts';

/** Flaps that turn the way in which they do not help to close a box, or an envelope; they turn about `fold`. */
export type WrongWay = { readonly panels: readonly string[]; readonly fold: Fold; readonly wrong: WrongTurn };

type WrongTurn =
  /** Out of the box, where others at that end turn in; or all of them, though they would just close it. */
  | { readonly kind: 'outward'; readonly isOpen: boolean }
  /** In at the edge of a lid that ends `short` of the wall behind which it would be tucked. */
  | { readonly kind: 'behind nothing'; readonly lid: string; readonly short: Length }
  /** Up at the edge of a lid, where it would be tucked in. */
  | { readonly kind: 'up'; readonly lid: string }
  /** Flat to one face of what it hangs on, where what it is like goes to the other. */
  | { readonly kind: 'away'; readonly others: readonly string[] };

/** A flap that turns out of the box, and how far it would reach across the end. */
type OutwardFlap = Pick<EndFlap, 'panel' | 'side' | 'fold' | 'depth'>;

/** How exactly flaps just close an end: no rim is so deep by chance. */
const CLOSELY: Length = Length.of(1, 16, 'in');

/** Every flap of a net that turns the wrong way; what is glued is for the proof of the glue. */
export function wrongWayFlaps(net: Net): readonly WrongWay[] {
  const atEnds = tubeEnds(net).flatMap((end) => [
    ...outward(net, end),
    ...behindNothing(end),
    ...standing(net, end),
  ]);
  const folded = flatWays(net).map(({ panel, fold, ...way }) => ({
    panels: [panel],
    fold,
    wrong: { kind: 'away', ...way } as const,
  }));
  return [...atEnds, ...folded];
}

function standing(net: Net, end: TubeEnd): WrongWay[] {
  return standingTucks(net, end).flatMap(({ panel, fold, lid }) =>
    net.opens?.includes(panel) ? [] : [{ panels: [panel], fold, wrong: { kind: 'up', lid } }],
  );
}

/** Whether any flap at an end turns out of the box. */
export function hasOutwardFlap(net: Net, end: TubeEnd): boolean {
  return outwardFlaps(net, end).length > 0;
}

function outward(net: Net, end: TubeEnd): WrongWay[] {
  const out = outwardFlaps(net, end);
  if (out.some(({ panel }) => isStuck(net, panel))) return [];
  const isOpen = end.flaps.length === 0;
  if (isOpen && !isSquare(end.tube)) return [];
  const wrong = isOpen ? [0, 1].flatMap((side) => closers(net, end, out, side)) : out;
  const [first] = wrong;
  if (!first) return [];
  return [{ panels: wrong.map(({ panel }) => panel), fold: first.fold, wrong: { kind: 'outward', isOpen } }];
}

function outwardFlaps(net: Net, { tube, end }: TubeEnd): OutwardFlap[] {
  return foldsAtEnd(net, tube, end).flatMap(({ panel, side, fold }) => {
    const isOut = signedAngle(fold) === -90 * Math.sign(tube.turn);
    return isOut ? [{ panel, side, fold, depth: reachFrom(lineOf(fold), net, panel) }] : [];
  });
}

/** The flaps on two facing sides, if they would just meet each other or one of them the facing wall. */
function closers(net: Net, { tube }: TubeEnd, flaps: readonly OutwardFlap[], side: number): OutwardFlap[] {
  const across = sideWidth(net, tube, side + 1);
  const facing = flaps.filter((flap) => flap.side === side || flap.side === side + 2);
  const meets = (depth: Length): boolean => !depth.minus(across).abs().greaterThan(CLOSELY);
  if (meets(Length.sum(facing.map(({ depth }) => depth)))) return facing;
  return facing.filter(({ depth }) => meets(depth));
}

/** Of both halves of a lid the flaps together: their folds lie on one line. */
function behindNothing({ flaps }: TubeEnd): WrongWay[] {
  const hanging = flaps.flatMap(({ panel: lid, tuck, depth, across }) => {
    const short = across?.minus(depth);
    return tuck && short?.greaterThan(HALF_LID) ? [{ tuck, lid, short }] : [];
  });
  const [first] = hanging;
  if (!first) return [];
  const panels = hanging.map(({ tuck }) => tuck.panel);
  const { tuck, lid, short } = first;
  return [{ panels, fold: tuck.fold, wrong: { kind: 'behind nothing', lid, short } }];
}
