import { Length } from '../../measure/length.ts';
import { roundMillimeters } from '../../measure/round.ts';
import { restOf } from '../base-panel.ts';
import { arcPoints } from '../forming/arc.ts';
import { boxSize, type Fold, type Mate, type Net } from '../net.ts';
import { foldBetween, foldsOf, isStuck, otherSide, panelOf } from '../panel-tree.ts';
import {
  areFacing,
  foldLength,
  isFlatOn,
  lineOf,
  positionOf,
  reachFrom,
  signedAngle,
  type Tube,
  tubesOf,
} from '../tube.ts';
import { sideWidth } from './seam.ts';

/** One way across a pocket: how far it is, what ends it, and whether the paper goes round what is put in that way. */
export type PocketWay = { readonly extent: Length; readonly isClosed: boolean; readonly isRound: boolean };

/**
 * Room between sheets that lie flat on one another: an envelope, a flat band, a pocket folded up and glued at its
 * sides, a pillow box before it is pressed. Paper does not stretch: what is `d` thick takes `d` of the width where the
 * paper goes round it, for its girth, 2 (w + d), is at most twice the width.
 */
export type Pocket = {
  readonly width: PocketWay;
  readonly height: PocketWay;
  /** Of a pillow box: how far each wall bulges in its middle. */
  readonly rise?: Length;
};

/** Less than this folded over and glued is a hem. Common practice, no source. */
const LEAST_POCKET: Length = Length.of(1, 1, 'in');

/** Every pocket of a net. */
export function pocketsOf(net: Net): readonly Pocket[] {
  const tubes = tubesOf(net).filter(isFlat);
  if (tubes.length > 0) return tubes.map((tube) => flatTube(net, tube));
  return [...pouches(net), ...foldedUp(net)];
}

/** How deep a pillow is, pressed open, over so much of its width: both walls are arcs. */
export function depthOver(across: Length, { width: { extent }, rise }: Required<Pocket>): Length {
  let reached = 0;
  const middle = arcPoints(extent, rise, STRETCHES).slice(STRETCHES / 2);
  for (const [index, to] of middle.entries()) {
    const from = middle[index - 1];
    if (!from) continue;
    const [run, drop] = [to.along.minus(from.along).mm, from.rise.minus(to.rise).mm];
    const chord = Math.sqrt(run ** 2 - drop ** 2);
    if (reached + chord >= across.mm / 2) {
      const share = (across.mm / 2 - reached) / chord;
      return roundMillimeters(2 * (from.rise.mm - drop * share), 1000);
    }
    reached += chord;
  }
  return Length.zero;
}

/** Straight stretches an arc is reckoned with; even, so that one of its points is the middle. */
const STRETCHES = 64;

/** Two sides, one folded flat on the other. */
function isFlat({ sides, joints }: Tube): boolean {
  return sides.length === 2 && joints.every(({ fold }) => isFlatOn(fold));
}

/** A tube of two sides; closed where something is folded in at an end. Curved ends reach into it. */
function flatTube(net: Net, tube: Tube): Pocket {
  const [wall = tube.tab] = tube.walls;
  const along = tube.lines === 'upright' ? 'height' : 'width';
  const whole = tube.joints[0] ? foldLength(tube.joints[0].fold) : Length.zero;
  const clear = boxSize(panelOf(net, wall).box)[along];
  const isClosed = tube.walls.some((each) => foldsOf(net, each).some((fold) => lineOf(fold) !== tube.lines));
  const round = {
    extent: Length.min(sideWidth(net, tube, 0), sideWidth(net, tube, 1)),
    isClosed: true,
    isRound: true,
  };
  const open = { extent: clear, isClosed, isRound: false };
  const rise = whole.minus(clear).half();
  const ways = along === 'height' ? { width: round, height: open } : { width: open, height: round };
  return rise.sign > 0 ? { ...ways, rise } : ways;
}

const EDGES = { width: ['left', 'right'], height: ['top', 'bottom'] } as const;

/** A panel with flaps folded flat over it from three or four sides, as an envelope has; it may be the back of the base. */
function pouches(net: Net): Pocket[] {
  if (!net.folds.every(isFlatOn)) return [];
  const { base } = restOf(net);
  const backs = foldsOf(net, base).flatMap((fold) => otherSide(fold, base) ?? []);
  const found = [base, ...backs].map((panel) => pouchOn(net, panel));
  return found.filter(({ width, height }) => width.isRound || height.isRound).slice(0, 1);
}

function pouchOn(net: Net, panel: string): Pocket {
  const { box } = panelOf(net, panel);
  const way = (side: 'width' | 'height'): PocketWay => {
    const flaps = EDGES[side].flatMap((edge) => flapAt(net, panel, edge) ?? []);
    const isRound = flaps.length === 2 && flaps.every((flap) => isStuck(net, flap));
    const [sheet, ...others] = flaps;
    const isWrappedIn = sheet !== undefined && others.length === 0 && isWrapped(net, panel, sheet);
    const lines = side === 'width' ? 'upright' : 'across';
    // From the fold between the two to that of the flap it is as far as the sheet that the flap hangs on.
    const extent = isWrappedIn ? reachFrom(lines, net, sheet) : boxSize(box)[side];
    return { extent, isClosed: flaps.length === 2 || isWrappedIn, isRound };
  };
  return { width: way('width'), height: way('height') };
}

/** Whether a sheet that is folded onto a panel goes on, round the panel's other edge, in a flap. */
function isWrapped(net: Net, panel: string, sheet: string): boolean {
  const fold = foldBetween(net, panel, sheet);
  return foldsOf(net, sheet).some(
    (next) => fold && areFacing(next, fold) && signedAngle(next) === signedAngle(fold),
  );
}

/** The panel that hangs on one edge of another. */
function flapAt(net: Net, base: string, edge: 'left' | 'right' | 'top' | 'bottom'): string | undefined {
  const lines = edge === 'left' || edge === 'right' ? 'upright' : 'across';
  const position = panelOf(net, base).box[edge];
  const fold = foldsOf(net, base).find((each) => lineOf(each) === lines && positionOf(each).equals(position));
  return fold && otherSide(fold, base);
}

/** Panels folded flat on their neighbor and glued to it at their sides: open on the side that faces the fold. */
function foldedUp(net: Net): Pocket[] {
  return net.glue.flatMap((mate): Pocket[] => {
    const fold = foldOfPocket(net, mate);
    if (!fold) return [];
    const round = { extent: foldLength(fold), isClosed: true, isRound: true };
    const open = { extent: reachFrom(lineOf(fold), net, mate.from), isClosed: false, isRound: false };
    return [lineOf(fold) === 'across' ? { width: round, height: open } : { width: open, height: round }];
  });
}

/** The fold of what is folded up on its neighbor, glued to it, and no hem; undefined of any other glue. */
function foldOfPocket(net: Net, { from, to }: Mate): Fold | undefined {
  const fold = foldBetween(net, from, to);
  if (!fold || !isFlatOn(fold) || lineOf(fold) === 'slanted') return undefined;
  return reachFrom(lineOf(fold), net, from).lessThan(LEAST_POCKET) ? undefined : fold;
}

/**
 * The same where it leaves some of its neighbor free, as a pocket of a folder or of a card does: it is stuck along its
 * sides alone. What covers its neighbor, or a wall of a box, makes that twice as thick.
 */
export function sideGluedAt(net: Net, mate: Mate): Fold | undefined {
  const fold = foldOfPocket(net, mate);
  if (!fold || tubesOf(net).length > 0 || pouches(net).length > 0) return undefined;
  const isParallel = net.folds.some((each) => !isFlatOn(each) && lineOf(each) === lineOf(fold));
  const [own, under] = [mate.from, mate.to].map((panel) => reachFrom(lineOf(fold), net, panel));
  return own && under && own.lessThan(under) && !isParallel ? fold : undefined;
}
