import { Length } from '../measure/length.ts';
import { type TubeEnd, tubeEnds } from '../shape/closure/ends.ts';
import { LEAST_GLUE } from '../shape/closure/glue.ts';
import { isSquare, sideWidth } from '../shape/closure/seam.ts';
import type { FoldedSheet } from './folded-sheets.ts';
import type { ProofContext } from './rule.ts';

/**
 * The ends of a folded sheet that a piece of their own closes, stuck on their flaps: it reaches on to those at two facing
 * walls, or from wall to wall.
 */
export function endsWithOwnBase(context: ProofContext, sheet: FoldedSheet): readonly TubeEnd[] {
  return tubeEnds(sheet.net).filter((end) => hasOwnBase(context, sheet, end));
}

function hasOwnBase({ shapes }: ProofContext, { net, of }: FoldedSheet, end: TubeEnd): boolean {
  if (!isSquare(end.tube)) return false;
  const least = [0, 1].map((side) => {
    const across = sideWidth(net, end.tube, side + 1);
    const depths = end.flaps.filter((flap) => flap.side % 2 === side).map(({ depth }) => depth);
    return Length.min(across, across.minus(Length.sum(depths)).plus(LEAST_GLUE.times(2)));
  });
  return shapes.layers.some(({ piece: { on }, under, size }) => {
    const id = under.panel?.id;
    const isThere = id !== undefined && end.flaps.some(({ parts }) => parts.includes(id));
    if (!isThere || on?.value.piece !== of.piece) return false;
    const ways = [
      [size.width, size.height],
      [size.height, size.width],
    ];
    return ways.some((way) => way.every((reach, index) => !reach.lessThan(least[index] ?? reach)));
  });
}
