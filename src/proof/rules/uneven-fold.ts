import type { Length } from '../../measure/length.ts';
import { type UnevenFold, unevenFolds } from '../../shape/closure/halves.ts';
import { closedSheets, foldPlace, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OfPiece & Pick<UnevenFold, 'kind' | 'panels' | 'by'>;

export const unevenFold: Rule<Facts> = {
  severity: 'note',
  summary: 'The leaves of a card end together and its gates meet, unless they differ by more than a slip.',
  why: 'A card scored one groove off the middle shows a narrow strip of its back. It still folds, and you may want a front that is a little short, so this is only a note.',
  fails: {
    pieces:
      'card: { stock: cream, cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [4 1/8] }], panels: { back: A1, front: B1 }, folds: { A|B: mountain 180 } }',
    blames: '4 1/8',
  },
  passes: { with: '4 1/4', insteadOf: '4 1/8' },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      for (const { kind, panels, by, fold } of unevenFolds(sheet.net, sheet.caliper)) {
        yield { at: foldPlace(sheet, fold), facts: { ...sheet.of, kind, panels, by } };
      }
    }
  },
  say: ({ kind, piece, panels, by, unit }) => {
    const [first, second] = panels.map((panel) => `${piece}.${panel}`);
    const say = (length: Length): string => sayLength(length, unit);
    const amount = say(by.abs());
    const meet = by.sign > 0 ? `leave a gap of ${amount}` : `lie over each other by ${amount}`;
    return {
      message:
        kind === 'leaves'
          ? `when folded, ${first} is ${amount} shorter than ${second}`
          : `folded in, ${first} and ${second} ${meet}`,
      remedy: `move the score line by ${say(by.abs().half())}, unless you want it that way`,
    };
  },
};
