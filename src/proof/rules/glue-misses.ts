import type { Length } from '../../measure/length.ts';
import { type GlueFit, glueFits } from '../../shape/closure/glue.ts';
import { lengthOf } from '../../shape/closure/suspects.ts';
import { closedSheets, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OfPiece & {
  readonly from: string;
  readonly to: string;
  readonly verdict: Exclude<GlueFit['verdict'], 'meets'>;
  /** How far it lies off what it is to stick to. */
  readonly distance: Length;
};

export const glueMisses: Rule<Facts> = {
  severity: 'error',
  summary: 'Once folded, every glue area lies on what it is stuck to.',
  why: 'A flap that ends up at another place, or stands at an angle to what it should be stuck to, cannot be glued there. Usually a fold goes the wrong way or the glue names the wrong panel.',
  fails: { box: { glue: 'tab: A3, A4: D4, C4: D4, B4: C3' }, blames: 'B4: C3' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      for (const { mate, verdict, distance } of glueFits(sheet.shape, sheet.caliper)) {
        if (verdict === 'meets') continue;
        const { from, to, at = sheet.at } = mate;
        yield { at, facts: { ...sheet.of, from, to, verdict, distance: lengthOf(distance) } };
      }
    }
  },
  say: ({ piece, from, to, verdict, distance, unit }) => {
    const how = {
      askew: 'the two stand at an angle',
      apart: `it lies ${sayLength(distance, unit)} away from it`,
      beside: 'it lies beside it',
    };
    return {
      message: `${piece}.${from} is to stick to ${piece}.${to}, but once folded ${how[verdict]}`,
      remedy: `name the panel it does lie on, or change how ${from} folds`,
    };
  },
};
