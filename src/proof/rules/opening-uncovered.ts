import type { Length } from '../../measure/length.ts';
import { roundFolded } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import { writeName } from '../../project/ref.ts';
import { distanceBetween, distanceOutside } from '../../shape/flat-polygon.ts';
import { upright } from '../../shape/fold.ts';
import { groundOf } from '../../shape/ground.ts';
import type { Layer } from '../../shape/shapes.ts';
import { eachOnBase, type OfLayer } from '../axis.ts';
import { leastPaper, OFF_ARC } from '../openings.ts';
import type { ProofContext, Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OfLayer & {
  readonly opening: string;
  /** How far it stays short of the opening's edge; or how far it reaches past it where that is least. */
  readonly short?: Length;
  readonly past?: Length;
  /** A distance from the left or right is given, which are those of the back. */
  readonly isPlaced: boolean;
};

export const openingUncovered: Rule<Facts> = {
  severity: 'error',
  summary: 'What is stuck behind an opening covers it, with a border all around for the glue.',
  why: 'A picture smaller than its window shows a gap, and one just as large has nothing to hold it. An eighth of an inch (3 mm) all round is the least that takes tape.',
  fails: {
    pieces:
      'card: { stock: cream, cut: 4 x 5, openings: { window: { size: 2 x 3 } } }\nphoto: { stock: cream, cut: 2 x 3 1/2, behind: card.window }',
    blames: 'card.window',
  },
  passes: { with: 'cut: 2 1/2 x 3 1/2', insteadOf: 'cut: 2 x 3 1/2' },
  check: (context) => eachOnBase(context, (layer) => uncoveredBy(layer, context)),
  say: ({ layer, opening, short, past, isPlaced, unit }) => {
    const least = leastPaper(unit);
    const reach = `make it reach ${sayLength(least, unit)} past the edge all round`;
    const remedy = isPlaced
      ? `${reach}: left and right are as you look at the back, where it is stuck`
      : reach;
    const say = (length: Length): string => sayLength(length, unit);
    if (short) {
      return {
        message: `${layer} stays ${say(short)} short of the edge of ${opening}, which it is behind`,
        remedy,
      };
    }
    const by = past?.sign ? `only ${say(past)}` : 'nothing';
    return {
      message: `${layer} reaches ${by} past the edge of ${opening}; the glue takes ${say(least)}`,
      remedy,
    };
  },
};

function uncoveredBy(
  layer: Layer,
  { project: { unit }, shapes }: ProofContext,
): Omit<Facts, keyof OfLayer> | undefined {
  const hole = layer.under.opening?.outline.map(upright);
  if (!hole) return undefined;
  const { outline } = groundOf(layer, shapes);
  const opening = writeName(layer.on);
  const ruler = rulerUnit(unit);
  const { left, right } = layer.piece.placement;
  const isPlaced = (left ?? right) !== undefined;
  const out = roundFolded(Math.max(...hole.map((point) => distanceOutside(point, outline))), ruler);
  if (out.mm > OFF_ARC) return { opening, short: out, isPlaced };
  const past = roundFolded(distanceBetween(hole, outline), ruler);
  return past.lessThan(leastPaper(unit)) ? { opening, past, isPlaced } : undefined;
}
