import { type GatePair, gatesApart as pairsApart } from '../../shape/closure/halves.ts';
import { isFlatOn } from '../../shape/tube.ts';
import { closedSheets, foldWords, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';

/** `angle` is how far the second is folded, where that is not flat. */
type Facts = OfPiece & Pick<GatePair, 'panels' | 'base'> & { readonly angle?: number };

export const gatesApart: Rule<Facts> = {
  severity: 'warning',
  summary: 'Two gates that would meet in the middle of a card are folded flat on the same side of it.',
  why: 'Two flaps of half the width are meant to meet over the panel between them. If one of them is folded the other way, it ends up behind that panel; folded only halfway, it stands up.',
  fails: {
    pieces:
      'card: { stock: cream, cut: 8 x 4, score: [{ from: left, at: [2, 6] }], panels: { right: A1, back: B1, left: C1 }, folds: { A|B: mountain 180, B|C: valley 180 } }',
    blames: 'B|C: valley 180',
  },
  passes: { with: 'B|C: mountain 180', insteadOf: 'B|C: valley 180' },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      for (const { fold, panels, base } of pairsApart(sheet.net, sheet.caliper)) {
        const angle = isFlatOn(fold) ? {} : { angle: fold.angle };
        yield { at: foldWords(sheet, fold), facts: { ...sheet.of, panels, base, ...angle } };
      }
    }
  },
  say: ({ piece, panels: [first, second], base, angle }) =>
    angle === undefined
      ? {
          message: `${piece}.${first} is folded onto one side of ${base} and ${second} onto the other, though together they are as wide as it is`,
          remedy: `fold ${second} the other way, so that the two meet, unless you want it that way`,
        }
      : {
          message: `${piece}.${first} is folded flat onto ${base} and ${second} by only ${angle}°, though together they are as wide as it is`,
          remedy: `fold ${second} by 180° too, so that the two meet, unless you want it that way`,
        },
};
