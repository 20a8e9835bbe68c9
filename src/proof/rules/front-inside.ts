import type { Length } from '../../measure/length.ts';
import { isSameRef } from '../../project/ref.ts';
import { restOf } from '../../shape/base-panel.ts';
import { spines } from '../../shape/closure/halves.ts';
import { nearlyEqual } from '../../shape/closure/tolerance.ts';
import type { Fold, Net } from '../../shape/net.ts';
import { gluedAstray } from '../../shape/stacking/blocked-glue.ts';
import { faceStateOf } from '../../shape/stacking/face-states.ts';
import { stackOf } from '../../shape/stacking/folding.ts';
import { isFlatOn, isOneLine, lineOf, reachFrom, signedAngle } from '../../shape/tube.ts';
import { closedSheets, foldWords, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';

type Facts = OfPiece & { readonly panel: string };

export const frontInside: Rule<Facts> = {
  severity: 'warning',
  summary: 'Once folded, a sheet shows its outside.',
  why: 'A sheet is drawn with its outside facing you, and folds are named as seen from there. With every fold the other way, the shape still closes, but what is meant for the front ends up inside.',
  fails: {
    pieces:
      'card: { stock: cream, cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [4 1/4] }], panels: { back: A1, front: B1 }, folds: { A|B: valley 180 } }',
    blames: 'A|B: valley 180',
  },
  passes: { with: 'mountain', insteadOf: 'valley' },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      const { net, caliper, of } = sheet;
      const { base } = restOf(net);
      const spine = valleySpine(net, caliper);
      if (spine) {
        yield { at: foldWords(sheet, spine), facts: { ...of, panel: base } };
        continue;
      }
      if (net.panels.some(({ id }) => faceStateOf(net, caliper.mm, id, 'outside').isSeen)) continue;
      // What lies on it says so itself, and so does glue that is folded astray.
      const carries = context.shapes.layers.some(({ on }) =>
        isSameRef(on, { piece: of.piece, part: base, face: 'outside' }),
      );
      const stack = stackOf(net, caliper.mm);
      if (carries || stack.crossings.length > 0 || gluedAstray(stack).length > 0) continue;
      // What closes the whole sheet hides it sooner than what is folded before.
      const folds = [...soleLines(net), ...net.folds.filter(({ panels }) => panels.includes(base))];
      const fold = folds.find((each) => signedAngle(each) < 0) ?? folds[0];
      yield { at: fold ? foldWords(sheet, fold) : sheet.at, facts: { ...of, panel: base } };
    }
  },
  say: ({ piece, panel }) => ({
    message: `once ${piece} is folded, the outside of ${panel} ends up inside`,
    remedy: 'fold the other way, mountain instead of valley as seen from outside',
  }),
};

/** The folds of a line that is the only one scored its way. */
function soleLines({ folds }: Net): readonly Fold[] {
  return folds.filter((fold) =>
    folds.every((each) => lineOf(each) !== lineOf(fold) || isOneLine(each, fold)),
  );
}

/** Degrees; what is bent by less shows both its sides. */
const LEAST_CLOSED = 45;

/** The fold of a standing card, when it brings the outsides of its two halves towards each other. */
function valleySpine(net: Net, caliper: Length): Fold | undefined {
  return spines(net).find((fold) => {
    const [one, other] = fold.panels.map((panel) => reachFrom(lineOf(fold), net, panel));
    const areHalves = one && other && nearlyEqual(one, other, caliper);
    return areHalves && !isFlatOn(fold) && signedAngle(fold) <= -LEAST_CLOSED;
  });
}
