import type { Length } from '../../measure/length.ts';
import type { FoldedShape } from '../folded-shape.ts';
import type { FlatPoint, Fold, Net } from '../net.ts';
import { lineOf, positionOf, tubesOf } from '../tube.ts';
import { brokenRings, folded } from './sound.ts';

/**
 * Where cuts are missing: along one line, where that is enough, else at every crossing that is torn. Empty when no cut
 * helps, but leaves the paper in parts or torn.
 */
export function missingSlits(shape: FoldedShape, caliper: Length): readonly Fold[] {
  const torn = tornFolds(shape);
  const { net } = shape;
  const lets = (slits: readonly Fold[]): boolean =>
    folded({ ...net, folds: net.folds.filter((fold) => !slits.includes(fold)) }, caliper).soundness !==
    'no net';
  const rows = torn.map((fold) => net.folds.filter((each) => isInLine(each, fold)));
  const isOneLine = torn.every((fold) => torn[0] && isInLine(fold, torn[0]));
  const wanted = isOneLine ? [torn, ...rows] : [...rows, torn];
  return wanted.find(lets) ?? [];
}

function isInLine(one: Fold, other: Fold): boolean {
  const line = lineOf(one);
  return line !== 'slanted' && line === lineOf(other) && positionOf(one).equals(positionOf(other));
}

/**
 * At every crossing of score lines that is torn, the line between two panels that are to be stuck to each other, else one
 * between two that are neither base nor walls of a tube, for between its walls a box folds; the line that closes the ring
 * where there is none such.
 */
function tornFolds(shape: FoldedShape): readonly Fold[] {
  const { net, base } = shape;
  const walls = new Set([base, ...tubesOf(net).flatMap((tube) => tube.walls)]);
  const isFree = ({ panels }: Fold): boolean => !panels.some((panel) => walls.has(panel));
  const areMates = ({ panels }: Fold): boolean =>
    net.glue.some(({ from, to }) => panels.includes(from) && panels.includes(to));
  const torn = brokenRings(shape).flatMap((ring) => {
    const crossings = [ring.from, ring.to]
      .map((end) => foldsAt(net, end))
      .filter((each) => each.length === 4);
    const cuts = crossings.map((round) => round.find(areMates) ?? [ring, ...round].find(isFree) ?? ring);
    return cuts.length > 0 ? cuts : [ring];
  });
  return [...new Set(torn)];
}

function foldsAt({ folds }: Net, { x, y }: FlatPoint): readonly Fold[] {
  return folds.filter(({ from, to }) => [from, to].some((end) => end.x.equals(x) && end.y.equals(y)));
}
