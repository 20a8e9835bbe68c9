import { spines } from '../../shape/closure/halves.ts';
import type { Fold, Net } from '../../shape/net.ts';
import { gluedAstray } from '../../shape/stacking/blocked-glue.ts';
import { faceStateOf } from '../../shape/stacking/face-states.ts';
import { stackOf } from '../../shape/stacking/folding.ts';
import { isFlatOn, signedAngle } from '../../shape/tube.ts';
import { closedSheets, foldWords, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';

type Facts = OfPiece & { readonly panel: string };

export const frontInside: Rule<Facts> = {
  severity: 'warning',
  summary: 'Once folded, the outside of the front is seen.',
  why: 'A sheet is drawn with its outside facing you, and folds are named as seen from there. With every fold the other way round the shape closes all the same, but what is meant for the front ends up inside.',
  fails: {
    pieces:
      'card: { stock: cream, cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [4 1/4] }], panels: { back: A1, front: B1 }, folds: { A|B: valley 180 } }',
    blames: 'A|B: valley 180',
  },
  passes: { with: 'mountain', insteadOf: 'valley' },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      const { net, caliper, of } = sheet;
      const front = net.panels.find(({ role }) => role === 'front');
      const spine = valleySpine(net);
      if (front && spine) {
        yield { at: foldWords(sheet, spine), facts: { ...of, panel: front.id } };
        continue;
      }
      if (!front || faceStateOf(net, caliper.mm, front.id, 'outside').isSeen) continue;
      // What lies on it says so itself, and so does glue that is folded astray.
      const carries = context.shapes.layers.some(({ baseName }) => baseName === `${of.piece}.${front.id}`);
      const stack = stackOf(net, caliper.mm);
      if (carries || stack.crossings.length > 0 || gluedAstray(stack).length > 0) continue;
      const fold = net.folds.find(({ panels }) => panels.includes(front.id));
      yield { at: fold ? foldWords(sheet, fold) : sheet.at, facts: { ...of, panel: front.id } };
    }
  },
  say: ({ piece, panel }) => ({
    message: `once ${piece} is folded, the outside of ${panel} ends up inside`,
    remedy:
      'fold the other way, mountain instead of valley as seen from outside, or name another panel the front',
  }),
};

/** The fold of a standing card, when it brings the outsides of its front and its back towards each other. */
function valleySpine(net: Net): Fold | undefined {
  const faces = ['front', 'back'].map((role) => net.panels.find((panel) => panel.role === role)?.id);
  return spines(net).find(
    (fold) => !isFlatOn(fold) && signedAngle(fold) < 0 && faces.every((id) => id && fold.panels.includes(id)),
  );
}
