import { foldsOf, otherSide, panelOf } from '../../shape/panel-tree.ts';
import { isFlatOn } from '../../shape/tube.ts';
import { closedSheets, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';

type Facts = OfPiece & { readonly tab: string; readonly panel: string };

export const tabOnOwnPanel: Rule<Facts> = {
  severity: 'error',
  summary: 'A tab is not stuck to the very panel it hangs on.',
  why: 'A tab closes something by joining two ends of the paper. Folded back and stuck to its own panel it is a hem, and what it should have closed stays open.',
  fails: {
    pieces:
      'band: { stock: cream, cut: 9 x 2, score: [{ from: left, at: [4 1/4, 8 1/2] }], panels: { back: A1, front: B1, tab: C1 }, folds: { A|B: mountain 180, B|C: mountain 180 }, glue: { tab: front } }',
    blames: 'tab: front',
  },
  passes: { with: 'glue: { tab: back }', insteadOf: 'glue: { tab: front }' },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      for (const { from, to, at = sheet.at } of sheet.net.glue) {
        const isOwn = foldsOf(sheet.net, from).some((fold) => isFlatOn(fold) && otherSide(fold, from) === to);
        if (!isOwn || panelOf(sheet.net, from).role !== 'tab') continue;
        yield { at, facts: { ...sheet.of, tab: from, panel: to } };
      }
    }
  },
  say: ({ piece, tab, panel }) => ({
    message: `${piece}.${tab} is stuck to ${panel}, the panel it hangs on: that closes nothing`,
    remedy: 'name the panel it meets at the other end of the paper',
  }),
};
