import type { Unit } from '../../measure/length.ts';
import { type UnevenFold, unevenFolds } from '../../shape/closure/halves.ts';
import { sheetWith } from '../example.ts';
import { closedSheets, type FoldedSheet, panelName } from '../folded-sheets.ts';
import type { ProofContext, Rule, Statement } from '../rule.ts';
import { foldPlace } from '../score-place.ts';
import { sayLength } from '../words.ts';

const card = (at: string): string =>
  sheetWith({
    pieces: `card: { stock: cream, cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [${at}] }], panels: { back: A1, front: B1 }, folds: { A|B: mountain 180 } }`,
  });

export const unevenFold: Rule<'uneven-fold'> = {
  id: 'uneven-fold',
  severity: 'note',
  summary: 'The leaves of a card end together, and its gates meet, or differ by more than a slip.',
  why: 'A card scored a groove off the middle shows a narrow strip of its back. It folds all the same, and a front that is a little shy may be meant: so this is only pointed out.',
  fails: { sheet: card('4 1/8'), blames: '4 1/8' },
  passes: { sheet: card('4 1/4') },
  check: ({ project, shapes, report }: ProofContext) => {
    for (const sheet of closedSheets(project, shapes)) {
      for (const uneven of unevenFolds(sheet.net, sheet.caliper)) report(words(sheet, uneven, project.unit));
    }
  },
};

function words(sheet: FoldedSheet, { kind, panels, by, fold }: UnevenFold, unit: Unit): Statement {
  const [first, second] = panels.map((panel) => panelName(sheet, panel));
  const amount = sayLength(by.abs(), unit);
  const meet = by.sign > 0 ? `leave a gap of ${amount}` : `lie over each other by ${amount}`;
  return {
    message:
      kind === 'leaves'
        ? `folded together, ${first} ends ${amount} before ${second}`
        : `folded in, ${first} and ${second} ${meet}`,
    remedy: `move the score line by ${sayLength(kind === 'leaves' ? by.half() : by.abs(), unit)}, unless it is meant`,
    at: foldPlace(sheet, fold),
  };
}
