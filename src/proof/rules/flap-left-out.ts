import { unheldParts } from '../../shape/closure/held.ts';
import { type LeftOut, leftOutFlaps } from '../../shape/closure/twins.ts';
import { closedSheets, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';

type Facts = OfPiece & Omit<LeftOut, 'mate'>;

export const flapLeftOut: Rule<Facts> = {
  severity: 'warning',
  summary: 'Flaps that match are both stuck down, and every tab joins two panels.',
  why: 'With one side flap stuck down and the other forgotten, things fall out on that side. And a tab that is stuck to the panel it hangs on joins nothing.',
  fails: {
    pieces: `folder:
  stock: cream
  cut: 8 x 7
  score: [{ from: left, at: [4] }, { from: bottom, at: [1 1/2] }]
  slit: [A|B 2]
  folds: { A|B: mountain 90, 1|2: mountain 180 }
  glue: { A2: A1 }`,
    blames: 'folder',
  },
  passes: { with: 'A2: A1, B2: B1', insteadOf: 'A2: A1' },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      const unheld = unheldParts(sheet.shape, sheet.caliper).flatMap(({ panels }) => panels);
      for (const { mate, ...flap } of leftOutFlaps(sheet.net)) {
        if (!unheld.includes(flap.panel)) yield { at: mate?.at ?? sheet.at, facts: { ...sheet.of, ...flap } };
      }
    }
  },
  say: ({ piece, panel, to, hangsThere, twin }) => {
    const stuck = to === undefined ? 'nothing' : `${piece}.${to}${hangsThere ? ', which it hangs on' : ''}`;
    const unlike = twin ? `, and ${twin.panel}, which is like it, to ${twin.to}` : ': that joins nothing';
    return {
      message: `${piece}.${panel} is stuck to ${stuck}${unlike}`,
      remedy:
        to === undefined
          ? `stick ${panel} too, or say "opens: [${panel}]" where it is meant to hang loose`
          : `stick ${panel} to ${twin?.to ?? 'what lies on its other side'}`,
    };
  },
};
