import { Length } from '../../measure/length.ts';
import { stackOf } from '../../shape/stacking/folding.ts';
import { isTight, type RolledLeaf, rolledLeaves } from '../../shape/stacking/rolled.ts';
import { closedSheets, foldWords, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OfPiece & Omit<RolledLeaf, 'fold'>;

/** How much narrower a leaf is that is rolled in, on either ruler. Common practice, no source. */
const [SIXTEENTH, TWO]: readonly [Length, Length] = [Length.of(1, 16, 'in'), Length.of(2, 1, 'mm')];

export const rolledLeaf: Rule<Facts> = {
  severity: 'warning',
  summary: 'A leaf that is rolled in is narrower than the one it is folded onto.',
  why: 'A leaf inside the next fold needs room there: if it is as wide as its neighbor, it jams in the fold and buckles. A sixteenth of an inch less is usual (common practice, no source). Folded back and forth, as in an accordion, leaves may be equal.',
  fails: {
    pieces:
      'card: { stock: cream, cut: 9 x 4, score: [{ from: left, at: [3, 6] }], panels: { front: B1 }, folds: { A|B: mountain 180, B|C: mountain 180 } }',
    blames: 'A|B: mountain 180',
  },
  passes: { with: 'A|B: valley 180', insteadOf: 'A|B: mountain 180' },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      const stack = stackOf(sheet.net, sheet.caliper.mm);
      if (stack.crossings.length > 0) continue;
      const tight = rolledLeaves(stack).find((rolled) => isTight(rolled, sheet.caliper));
      if (!tight) continue;
      const { fold, ...facts } = tight;
      yield { at: foldWords(sheet, fold), facts: { ...sheet.of, ...facts } };
    }
  },
  say: ({ piece, leaf, panels: [cover, carrier], width, room, unit }) => ({
    message: `${piece}.${leaf}, ${sayLength(width, unit)} wide, is rolled in between ${cover} and ${carrier}, which leaves ${sayLength(room, unit)}: it jams in the fold and buckles`,
    remedy: `cut ${leaf} at ${sayLength(room.minus(unit === 'in' ? SIXTEENTH : TWO), unit)}, or fold it the other way, back and forth`,
  }),
};
