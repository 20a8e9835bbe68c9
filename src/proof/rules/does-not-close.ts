import type { Length, Unit } from '../../measure/length.ts';
import { seamFit } from '../../shape/closure/seam.ts';
import { lengthOf } from '../../shape/closure/suspects.ts';
import { tubesOf } from '../../shape/tube.ts';
import { foldedSheets, panelName, shapePlace } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = {
  readonly tab: string;
  readonly wall: string;
  /** How far the folds turn between them, or how far the tab lands from the wall's edge. */
  readonly wrong: { readonly degrees: number } | { readonly by: Length };
  readonly unit: Unit;
};

export const doesNotClose: Rule<Facts> = {
  severity: 'error',
  summary: 'The walls of a box come full circle, and its tab meets the edge it closes on.',
  why: 'Walls that turn by less or more than a full circle, or a tab that ends up beside the edge it belongs to, leave a body that cannot be glued without force.',
  fails: { box: { folds: '1|2: valley 90, C|D: mountain 60' }, blames: 'tab: A3' },
  passes: { box: {} },
  *check({ project, shapes }) {
    const { unit } = project;
    for (const sheet of foldedSheets(project, shapes)) {
      if (sheet.soundness === 'no net') continue;
      for (const tube of tubesOf(sheet.net)) {
        const fit = seamFit(sheet.shape, tube, sheet.caliper);
        if (fit.kind !== 'turn' && fit.kind !== 'misses') continue;
        const tab = panelName(sheet, tube.tab);
        const wall = panelName(sheet, tube.mate.to);
        const wrong = fit.kind === 'turn' ? { degrees: fit.degrees } : { by: lengthOf(fit.by) };
        yield { at: tube.mate.at ?? shapePlace(sheet), facts: { tab, wall, wrong, unit } };
      }
    }
  },
  say: ({ tab, wall, wrong, unit }) =>
    'degrees' in wrong
      ? {
          message: `the folds from ${wall} round to ${tab} turn by ${wrong.degrees}°, not by a full circle of 360°`,
          remedy: 'change the angles under "folds:" so that they add up to 360°',
        }
      : {
          message: `${tab} lands ${sayLength(wrong.by, unit)} from the edge of ${wall} that it closes on`,
          remedy: 'move the score lines so that the walls come round to that edge',
        },
};
