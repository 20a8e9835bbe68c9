import { Length } from '../../measure/length.ts';
import { type GlueFit, glueFits } from '../../shape/closure/glue.ts';
import { lengthOf } from '../../shape/closure/suspects.ts';
import { boxWith } from '../example-box.ts';
import { closedSheets, panelName, shapePlace } from '../folded-sheets.ts';
import type { ProofContext, Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

/** The least that holds with tape or glue, in both directions. Common practice, no source. */
const LEAST: Length = Length.of(1, 4, 'in');

/** What the folded model, which is made of floating-point numbers, may be off by, in millimetres. */
const ROUNDING = 1e-6;

export const glueOverlap: Rule<'glue-overlap'> = {
  id: 'glue-overlap',
  severity: 'error',
  summary: 'Every glue area overlaps what it is stuck to by at least a quarter inch in both directions.',
  why: 'A narrow strip of tape lets go when the box is first opened. A quarter inch is the least that holds, and half an inch is usual for a tab.',
  fails: { sheet: boxWith({ cut: '7 5/8 x 6 3/4' }), blames: 'tab: A3' },
  passes: { sheet: boxWith() },
  check: ({ project, shapes, report }: ProofContext) => {
    for (const sheet of closedSheets(project, shapes)) {
      for (const { mate, verdict, overlap } of glueFits(sheet.shape, sheet.caliper)) {
        const least = narrowest(overlap);
        if (verdict !== 'meets' || least >= LEAST.mm - ROUNDING) continue;
        const say = (length: Length): string => sayLength(length, project.unit);
        const [from, to] = [mate.from, mate.to].map((panel) => panelName(sheet, panel));
        report({
          message: `${from} overlaps ${to}, which it sticks to, by only ${say(lengthOf(least))}; ${say(LEAST)} is the least that holds`,
          remedy: `make ${mate.from} at least ${say(LEAST.minus(lengthOf(least)))} larger, or move its fold`,
          at: mate.at ?? shapePlace(sheet),
        });
      }
    }
  },
};

function narrowest({ width, height }: GlueFit['overlap']): number {
  return Math.min(width, height);
}
