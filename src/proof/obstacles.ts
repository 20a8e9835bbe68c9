import { Length } from '../measure/length.ts';
import { roundFolded } from '../measure/round.ts';
import { rulerUnit } from '../measure/ruler-unit.ts';
import type { Size } from '../measure/size.ts';
import { type Edge, isUpright } from '../project/net-as-written.ts';
import type { Place } from '../project/source.ts';
import { commonParts, extentOf, uncovered } from '../shape/common-parts.ts';
import { breadthOf, distanceBetween, type Point2 } from '../shape/flat-polygon.ts';
import { upright } from '../shape/fold.ts';
import { boxSize, type EdgeRow, type Fold, type Opening } from '../shape/net.ts';
import { gapOf } from '../shape/openings/gap.ts';
import { stripOf } from '../shape/punched-strip.ts';
import { signedAngle } from '../shape/tube.ts';
import { ovalIn, type Placed } from './decoration.ts';
import { leastPaper } from './openings.ts';

/** What the motifs of a row run into. */
export type Obstacle =
  | { readonly kind: 'end of paper'; readonly room: Length }
  | { readonly kind: 'no paper'; readonly missing: Size }
  /** Another row, and what is left between the two. */
  | {
      readonly kind: 'row';
      readonly meets: 'along' | 'across' | 'in the corner';
      readonly side: Edge;
      readonly depth: Length;
      readonly at: Place;
      readonly left: Length;
    }
  /** An opening, how far from the edge it begins, and what is left before it. */
  | { readonly kind: 'opening'; readonly name: string; readonly from: Length; readonly left: Length }
  | { readonly kind: 'image'; readonly stamp: string; readonly at: Place; readonly covered: Size }
  /** A fold that runs along the edge, and how far from it. */
  | { readonly kind: 'fold'; readonly panels: Fold['panels']; readonly in: Length };

/** What a ruler hardly shows is no running into something. */
const GIVE = Length.of(1, 64, 'in');

/** The first thing that a row runs into, if there is one; `others` are the rows it is held against. */
export function obstacleOf(row: Placed<EdgeRow>, others: readonly Placed<EdgeRow>[]): Obstacle | undefined {
  if (row.it.count === 0) return undefined;
  const strip = stripOf(row.it);
  return (
    paperEnd(row) ??
    firstOf(others, (other) => rowMet(row, other, strip)) ??
    firstOf(row.net.openings ?? [], (opening) => openingMet(row, opening, strip)) ??
    firstOf(row.net.folds, (fold) => foldPassed(row.it, fold)) ??
    imageCut(row, strip)
  );
}

function firstOf<T>(all: readonly T[], look: (each: T) => Obstacle | undefined): Obstacle | undefined {
  for (const each of all) {
    const found = look(each);
    if (found) return found;
  }
  return undefined;
}

function paperEnd({ it, net, facts }: Placed<EdgeRow>): Obstacle | undefined {
  const room = boxSize(it.box)[isUpright(it.side) ? 'width' : 'height'];
  if (it.depth.greaterThan(room)) return { kind: 'end of paper', room };
  const papers = (it.panel ? [it.panel] : net.panels).map(({ outline }) => outline.map(upright));
  // What runs into a corner that is cut back has a rule of its own.
  const missing = uncovered(stripOf(it, it.cut), papers, GIVE.mm);
  return missing.length > 0 ? { kind: 'no paper', missing: sizeOf(missing, facts) } : undefined;
}

function rowMet(
  row: Placed<EdgeRow>,
  { it, net }: Placed<EdgeRow>,
  strip: readonly Point2[],
): Obstacle | undefined {
  if (net !== row.net) return undefined;
  const { side, depth, written } = it;
  const meets =
    side === row.it.side ? 'along' : isUpright(side) === isUpright(row.it.side) ? 'across' : 'in the corner';
  // A die that runs through cuts the corners, whatever the row round them does.
  if (meets === 'in the corner' && (written.through || row.it.written.through)) return undefined;
  const left = paperBetween(strip, stripOf(it), row);
  const least = meets === 'across' ? leastPaper(row.facts.unit) : GIVE;
  const isBroad = commonParts(strip, stripOf(it)).some((part) => breadthOf(part) > GIVE.mm);
  const isMet = meets === 'across' ? left.lessThan(least) : isBroad;
  return isMet ? { kind: 'row', meets, side, depth, at: written.at, left } : undefined;
}

function openingMet(row: Placed<EdgeRow>, opening: Opening, strip: readonly Point2[]): Obstacle | undefined {
  const gap = gapOf(opening);
  const left = paperBetween(strip, gap, row);
  if (!left.lessThan(leastPaper(row.facts.unit))) return undefined;
  const from = paperBetween(strip.slice(0, 2), gap, row);
  return { kind: 'opening', name: opening.name, from, left };
}

function paperBetween(
  strip: readonly Point2[],
  other: readonly Point2[],
  { facts }: Placed<EdgeRow>,
): Length {
  const isOver = commonParts(strip, other).length > 0;
  return isOver ? Length.zero : roundFolded(distanceBetween(strip, other), rulerUnit(facts.unit));
}

function foldPassed({ side, box, depth, ends, length, panel }: EdgeRow, fold: Fold): Obstacle | undefined {
  if (panel || signedAngle(fold) === 0) return undefined;
  const [off, along, begin] = isUpright(side)
    ? (['x', 'y', box.top] as const)
    : (['y', 'x', box.left] as const);
  const inward = fold.from[off].minus(box[side]).abs();
  if (!fold.from[off].equals(fold.to[off]) || !inward.lessThan(depth)) return undefined;
  const [one, other] = [fold.from[along].minus(begin), fold.to[along].minus(begin)];
  const isBeside =
    Length.max(one, other).greaterThan(ends[0]) && Length.min(one, other).lessThan(length.minus(ends[1]));
  return isBeside ? { kind: 'fold', panels: fold.panels, in: inward } : undefined;
}

function imageCut({ net, facts }: Placed<EdgeRow>, strip: readonly Point2[]): Obstacle | undefined {
  return firstOf(net.impressions ?? [], (image) => {
    if (image.written.runsOff) return undefined;
    const cut = commonParts(strip, ovalIn(image)).filter((part) => breadthOf(part) > GIVE.mm);
    const { stamp } = image;
    return cut.length > 0
      ? { kind: 'image', stamp, at: image.written.stamp.at, covered: sizeOf(cut, facts) }
      : undefined;
  });
}

function sizeOf(parts: readonly (readonly Point2[])[], { unit }: Placed<EdgeRow>['facts']): Size {
  const { width, height } = extentOf(parts);
  return { width: roundFolded(width, rulerUnit(unit)), height: roundFolded(height, rulerUnit(unit)) };
}
