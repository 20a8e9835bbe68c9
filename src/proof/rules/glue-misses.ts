import { type GlueFit, glueFits } from '../../shape/closure/glue.ts';
import { lengthOf } from '../../shape/closure/suspects.ts';
import { boxWith } from '../example-box.ts';
import { closedSheets, type FoldedSheet, panelName, shapePlace } from '../folded-sheets.ts';
import type { ProofContext, Rule, Statement } from '../rule.ts';
import { sayLength } from '../words.ts';

export const glueMisses: Rule<'glue-misses'> = {
  id: 'glue-misses',
  severity: 'error',
  summary: 'Once folded, every glue area lies on what it is stuck to.',
  why: 'A flap that ends up at another place, or stands at an angle to what it should be stuck to, cannot be glued there. Usually a fold goes the wrong way or the glue names the wrong panel.',
  fails: { sheet: boxWith({ glue: 'tab: A3, A4: D4, C4: D4, B4: C3' }), blames: 'B4: C3' },
  passes: { sheet: boxWith() },
  check: ({ project, shapes, report }: ProofContext) => {
    for (const sheet of closedSheets(project, shapes)) {
      for (const fit of glueFits(sheet.shape, sheet.caliper)) {
        const how = howItMisses(fit, (mm) => sayLength(lengthOf(mm), project.unit));
        if (how !== undefined) report(words(sheet, fit, how));
      }
    }
  },
};

function howItMisses({ verdict, distance }: GlueFit, say: (mm: number) => string): string | undefined {
  if (verdict === 'askew') return 'but once folded the two stand at an angle';
  if (verdict === 'apart') return `but once folded it lies ${say(distance)} away from it`;
  return verdict === 'beside' ? 'but once folded it lies beside it' : undefined;
}

function words(sheet: FoldedSheet, { mate }: GlueFit, how: string): Statement {
  const [from, to] = [mate.from, mate.to].map((panel) => panelName(sheet, panel));
  return {
    message: `${from} is to stick to ${to}, ${how}`,
    remedy: `name the panel it does lie on, or change how ${mate.from} folds`,
    at: mate.at ?? shapePlace(sheet),
  };
}
