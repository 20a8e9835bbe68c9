import type { Length } from '../../measure/length.ts';
import type { Volume } from '../../measure/size.ts';
import { restOf } from '../base-panel.ts';
import { boxSize, type Fold, type Net } from '../net.ts';
import { foldBetween, foldsOf, isStuck, otherSide, panelOf } from '../panel-tree.ts';
import { lineOf, reachFrom, tubesOf } from '../tube.ts';
import { type TubeEnd, tubeEnds } from './ends.ts';
import { isSquare, sideWidth } from './seam.ts';

/**
 * The body of a folded box from score line to score line: width and height as its base panel is seen, depth away
 * from it. For a tray, width and depth of its base, and the height of its lowest wall. Exact; undefined for what is
 * neither a tube of four square sides nor a tray. The room inside is a thickness of paper less in every direction, half
 * of it on either side.
 */
export function bodyOf(net: Net): Volume | undefined {
  const tube = tubesOf(net).find(isSquare);
  const rest = restOf(net);
  if (tube) {
    const side = tube.sides.findIndex((walls) => walls.includes(rest.base));
    const [around, depth] = [sideWidth(net, tube, side), sideWidth(net, tube, side + 1)];
    const flat = boxSize(panelOf(net, rest.base).box);
    const { width, height } =
      tube.lines === 'upright' ? { ...flat, width: around } : { ...flat, height: around };
    return rest.lies === 'under' ? { width, height: depth, depth: height } : { width, height, depth };
  }
  return isTray(net) ? trayBody(net, rest.base) : undefined;
}

/** Whether walls rise from a base; what goes over another sheet, as a lid does, is no room of its own. */
function isTray(net: Net): boolean {
  const { lies } = restOf(net);
  return (lies === 'under' || lies === 'over') && !net.takes;
}

/** The way a body is open at both ends, as a band or a sleeve is; undefined where something closes an end. */
export function openWay(net: Net): keyof Volume | undefined {
  const ends = tubeEnds(net);
  return ends.length > 0 && ends.every(isOpen) ? wayAlong(net) : undefined;
}

/** The way that things may stand out of a body which is open at one end and has nothing to close it: a bag, a tray. */
export function mouthOf(net: Net): keyof Volume | undefined {
  const ends = tubeEnds(net);
  if (ends.length > 0) return ends.filter(isOpen).length === 1 ? wayAlong(net) : undefined;
  const { base } = restOf(net);
  const isPlain = net.panels.every(
    ({ id }) => id === base || foldBetween(net, base, id) !== undefined || isStuck(net, id),
  );
  return isTray(net) && isPlain ? 'height' : undefined;
}

function isOpen({ flaps }: TubeEnd): boolean {
  return flaps.length === 0;
}

/** The way along a tube, as its body is seen. */
function wayAlong(net: Net): keyof Volume {
  const tubes = tubesOf(net);
  if ((tubes.find(isSquare) ?? tubes[0])?.lines === 'across') return 'width';
  return restOf(net).lies === 'under' ? 'depth' : 'height';
}

function trayBody(net: Net, base: string): Volume | undefined {
  const { width, height: depth } = boxSize(panelOf(net, base).box);
  const [lowest] = wallsRound(net, base).toSorted((a, b) => a.height.compare(b.height));
  return lowest && { width, height: lowest.height, depth };
}

/** A wall that rises from the base of a tray, about that fold. */
export type RisingWall = { readonly panel: string; readonly height: Length; readonly fold: Fold };

export function wallsRound(net: Net, base: string): readonly RisingWall[] {
  return foldsOf(net, base).flatMap((fold) => {
    const panel = fold.angle === 90 ? otherSide(fold, base) : undefined;
    return panel === undefined ? [] : [{ panel, height: reachFrom(lineOf(fold), net, panel), fold }];
  });
}
