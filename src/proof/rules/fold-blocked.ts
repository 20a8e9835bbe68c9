import type { Length } from '../../measure/length.ts';
import { foldedLength } from '../../measure/round.ts';
import { stackOf } from '../../shape/stacking/folding.ts';
import { isMap } from '../../shape/stacking/ring-folds.ts';
import { closedSheets, foldWords, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OfPiece & {
  /** The two panels that are to be folded flat on one another. */
  readonly panels: readonly [string, string];
  readonly between: string;
  /** How far that one reaches past the fold. */
  readonly by: Length;
};

export const foldBlocked: Rule<Facts> = {
  severity: 'error',
  summary: 'Whatever is inside a flat fold ends short of the fold, in whatever order the paper is folded.',
  why: 'A leaf that is rolled up with others must be no wider than the one it is folded onto, or it jams in the next fold and buckles. Leaves folded back and forth may be as wide as they like.',
  fails: {
    pieces:
      'strip: { stock: cream, cut: 9 x 3, score: [{ from: left, at: [4, 6] }], panels: { front: A1 }, folds: { A|B: mountain 180, B|C: mountain 180 } }',
    blames: 'B|C: mountain 180',
  },
  passes: { with: 'B|C: valley 180', insteadOf: 'B|C: mountain 180' },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      if (isMap(sheet.net)) continue;
      const [crossing] = stackOf(sheet.net, sheet.caliper.mm).crossings;
      if (!crossing) continue;
      const { fold, between, by } = crossing;
      const { panels } = fold;
      yield { at: foldWords(sheet, fold), facts: { ...sheet.of, panels, between, by: foldedLength(by) } };
    }
  },
  say: ({ piece, panels, between, by, unit }) => {
    const [first, second] = panels.map((panel) => `${piece}.${panel}`);
    return {
      message: `the fold between ${first} and ${second} cannot be closed: ${between} lies in it and reaches ${sayLength(by, unit)} past it`,
      remedy: `make ${between} narrower by that much, or fold it the other way`,
    };
  },
};
