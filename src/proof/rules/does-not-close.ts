import { seamFit } from '../../shape/closure/seam.ts';
import { lengthOf } from '../../shape/closure/suspects.ts';
import { tubesOf } from '../../shape/tube.ts';
import { boxWith } from '../example-box.ts';
import { foldedSheets, panelName, shapePlace } from '../folded-sheets.ts';
import type { ProofContext, Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

export const doesNotClose: Rule<'does-not-close'> = {
  id: 'does-not-close',
  severity: 'error',
  summary: 'The walls of a box come full circle, and its tab meets the edge it closes on.',
  why: 'Walls that turn by less or more than a full circle, or a tab that ends up beside the edge it belongs to, leave a body that cannot be glued without force.',
  fails: {
    sheet: boxWith({ folds: '1|2: valley 90, C|D: mountain 60' }),
    blames: 'tab: A3',
  },
  passes: { sheet: boxWith() },
  check: ({ project, shapes, report }: ProofContext) => {
    for (const sheet of foldedSheets(project, shapes)) {
      if (sheet.soundness === 'no net') continue;
      for (const tube of tubesOf(sheet.net)) {
        const fit = seamFit(sheet.shape, tube, sheet.caliper);
        const at = tube.mate.at ?? shapePlace(sheet);
        const [tab, wall] = [tube.tab, tube.mate.to].map((panel) => panelName(sheet, panel));
        if (fit.kind === 'turn') {
          report({
            message: `the folds from ${wall} round to ${tab} turn by ${fit.degrees}°, not by a full circle of 360°`,
            remedy: `change the angles under "folds:" so that they add up to 360°`,
            at,
          });
        } else if (fit.kind === 'misses') {
          report({
            message: `${tab} lands ${sayLength(lengthOf(fit.by), project.unit)} from the edge of ${wall} that it closes on`,
            remedy: 'move the score lines so that the walls come round to that edge',
            at,
          });
        }
      }
    }
  },
};
