import { stackOf } from '../../shape/stacking/folding.ts';
import { type ReversedFold, reversedFolds } from '../../shape/stacking/ring-folds.ts';
import { closedSheets, foldWords, type OfPiece, sayRefold } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';

type Facts = OfPiece & {
  readonly panels: readonly [string, string];
  readonly taken: ReversedFold['taken'];
  readonly angle: number;
};

export const foldReversed: Rule<Facts> = {
  severity: 'error',
  summary: 'Where folds meet all around a corner, the last of them goes the way the others take it.',
  why: 'The folds around one corner close together: once all but one are made, the paper has no choice. A line creased the other way fights them all, and the corner tears or buckles.',
  fails: {
    pieces:
      'pan: { stock: cream, cut: 7 x 6, score: [{ from: left, at: [1] }, { from: top, at: [1] }, { from: corner A1, to: corner B2 }], panels: { back: B1, left: A2, floor: B2 }, folds: { back|A1 right: mountain 180, A1 left|A1 right: mountain 180 }, glue: { A1 right: back } }',
    blames: 'A1 left|A1 right: mountain 180',
  },
  passes: { with: 'A1 left|A1 right: valley 180', insteadOf: 'A1 left|A1 right: mountain 180' },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      const stack = stackOf(sheet.net, sheet.caliper.mm);
      for (const { fold, taken } of reversedFolds(stack)) {
        const { panels, angle } = fold;
        yield { at: foldWords(sheet, fold), facts: { ...sheet.of, panels, taken, angle } };
      }
    }
  },
  say: ({ piece, panels, taken, angle }) => {
    const [first, second] = panels.map((panel) => `${piece}.${panel}`);
    const said = taken === 'valley' ? 'mountain' : 'valley';
    return {
      message: `the line between ${first} and ${second} is a ${said} fold, but the other folds around the corner make it a ${taken}`,
      remedy: sayRefold(panels.join('|'), { direction: taken, angle }),
    };
  },
};
