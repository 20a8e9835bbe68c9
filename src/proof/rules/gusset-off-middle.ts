import { creasesOffMiddle, type OffCrease } from '../../shape/closure/gussets.ts';
import { panelOf } from '../../shape/panel-tree.ts';
import { lineOf, positionOf } from '../../shape/tube.ts';
import {
  closedSheets,
  type FoldedSheet,
  foldPlace,
  type LineMove,
  moveScore,
  type OfPiece,
} from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OfPiece &
  Pick<OffCrease, 'halves' | 'widths'> & {
    /** Where its line is scored and should be; absent where a form made it. */
    readonly move?: LineMove;
  };

export const gussetOffMiddle: Rule<Facts> = {
  severity: 'warning',
  summary: 'A gusset is scored down the middle of its side.',
  why: 'A bag stands square wherever its gussets are scored. But once it is folded flat, a crease off the middle brings the front past the back by twice as much, or makes the side buckle.',
  fails: {
    pieces:
      'bag: { stock: cream, cut: 10 1/2 x 6, score: [{ from: left, at: [3, 4 1/8, 5, 8, 9, 10] }], folds: { B|C: flat, E|F: flat }, taper: [G1], glue: { G1: A1 } }',
    blames: '4 1/8',
  },
  passes: { with: '4, 5', insteadOf: '4 1/8, 5' },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      for (const { fold, halves, widths } of creasesOffMiddle(sheet.net, sheet.caliper)) {
        const move = moveOf(sheet, { fold, halves, widths });
        yield { at: foldPlace(sheet, fold), facts: { ...sheet.of, halves, widths, ...(move && { move }) } };
      }
    }
  },
  say: ({ piece, halves, widths: [a, b], move, unit }) => {
    const [one, other, apart, off] = [a, b, a.minus(b).abs(), a.minus(b).abs().half()].map((each) =>
      sayLength(each, unit),
    );
    const [first, second] = halves.map((half) => `${piece}.${half}`);
    return {
      message: `${first} is ${one} wide and ${second} ${other}: their crease is ${off} off the middle, so that front and back end ${apart} apart when the bag is folded flat`,
      remedy: move
        ? `score it from the ${move.from} at ${sayLength(move.better, unit)} instead of ${sayLength(move.now, unit)}`
        : 'score it down the middle',
    };
  },
};

function moveOf(sheet: FoldedSheet, { fold, halves: [first], widths: [a, b] }: OffCrease): Facts['move'] {
  const lines = lineOf(fold);
  if (lines === 'slanted') return undefined;
  const position = positionOf(fold);
  const { box } = panelOf(sheet.net, first);
  const isBefore = position.equals(lines === 'upright' ? box.right : box.bottom);
  return moveScore(sheet, lines, position, isBefore ? b.minus(a).half() : a.minus(b).half())?.move;
}
