import type { Length } from '../../measure/length.ts';
import { protrusions } from '../../shape/closure/protrusion.ts';
import { lengthOf } from '../../shape/closure/suspects.ts';
import { closedSheets, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OfPiece & {
  readonly tab: string;
  readonly wall: string;
  /** How far it sticks out past the wall. */
  readonly by: Length;
};

export const glueSticksOut: Rule<Facts> = {
  severity: 'error',
  summary: 'No glue tab sticks out past what it is stuck to.',
  why: 'What sticks out of a seam shows, or stands in the way of the next wall. A tab is as wide as the wall it is stuck to at most.',
  fails: { box: { cut: '10 x 6 3/4' }, blames: 'tab: A3' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      for (const { mate, tab, wall, by } of protrusions(sheet.shape, sheet.caliper)) {
        yield { at: mate.at ?? sheet.at, facts: { ...sheet.of, tab, wall, by: lengthOf(by) } };
      }
    }
  },
  say: ({ piece, tab, wall, by, unit }) => ({
    message: `${piece}.${tab} sticks out ${sayLength(by, unit)} past ${piece}.${wall}, which it is stuck to`,
    remedy: `make ${tab} at least ${sayLength(by, unit)} smaller`,
  }),
};
