import { type GatePair, gatesApart as pairsApart } from '../../shape/closure/halves.ts';
import { closedSheets, foldWords, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';

type Facts = OfPiece & Pick<GatePair, 'panels' | 'base'>;

export const gatesApart: Rule<Facts> = {
  severity: 'warning',
  summary: 'Two gates that would meet in the middle of a card are folded to the same side of it.',
  why: 'Two flaps of half the width are meant to meet over the panel between them. With one of them folded the other way, it ends up behind that panel.',
  fails: {
    pieces:
      'card: { stock: cream, cut: 8 x 4, score: [{ from: left, at: [2, 6] }], panels: { right: A1, back: B1, left: C1 }, folds: { A|B: mountain 180, B|C: valley 180 } }',
    blames: 'B|C: valley 180',
  },
  passes: { with: 'B|C: mountain 180', insteadOf: 'B|C: valley 180' },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      for (const { fold, panels, base } of pairsApart(sheet.net, sheet.caliper)) {
        yield { at: foldWords(sheet, fold), facts: { ...sheet.of, panels, base } };
      }
    }
  },
  say: ({ piece, panels: [first, second], base }) => ({
    message: `${piece}.${first} is folded onto one side of ${base} and ${second} onto the other, though together they are as wide as it is`,
    remedy: `fold ${second} the other way, so that the two meet, unless it is meant`,
  }),
};
