import type { Length } from '../../measure/length.ts';
import { foldedLength } from '../../measure/round.ts';
import { seamFit } from '../../shape/closure/seam.ts';
import { tubesOf } from '../../shape/tube.ts';
import { foldedSheets, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OfPiece & {
  readonly tab: string;
  readonly wall: string;
  /** How far the folds turn between them, or how far the tab lands from the wall's edge. */
  readonly wrong: { readonly degrees: number } | { readonly by: Length };
};

export const doesNotClose: Rule<Facts> = {
  severity: 'error',
  summary: 'The walls of a box come full circle, and its tab meets the edge it closes on.',
  why: 'Walls that turn by less or more than a full circle, or a tab that ends up beside the edge it belongs to, leave a body that cannot be glued without force.',
  fails: { box: { folds: '1|2: valley 90, C|D: mountain 60' }, blames: 'tab: A3' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of foldedSheets(context)) {
      if (sheet.soundness === 'no net') continue;
      for (const tube of tubesOf(sheet.net)) {
        const fit = seamFit(sheet.shape, tube, sheet.caliper);
        if (fit.kind !== 'turn' && fit.kind !== 'misses') continue;
        const { tab, mate } = tube;
        const wrong = fit.kind === 'turn' ? { degrees: fit.degrees } : { by: foldedLength(fit.by) };
        yield { at: mate.at ?? sheet.at, facts: { ...sheet.of, tab, wall: mate.to, wrong } };
      }
    }
  },
  say: ({ piece, tab, wall, wrong, unit }) =>
    'degrees' in wrong
      ? {
          message: `the folds from ${piece}.${wall} round to ${piece}.${tab} turn by ${wrong.degrees}°, not by a full circle of 360°`,
          remedy: 'change the angles under "folds:" so that they add up to 360°',
        }
      : {
          message: `${piece}.${tab} lands ${sayLength(wrong.by, unit)} from the edge of ${piece}.${wall} that it closes on`,
          remedy: 'move the score lines so that the walls come round to that edge',
        },
};
