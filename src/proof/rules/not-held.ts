import { unheldParts } from '../../shape/closure/held.ts';
import type { Unheld } from '../../shape/closure/holding.ts';
import { closedSheets, type OfPiece } from '../folded-sheets.ts';
import { endsWithOwnBase } from '../own-bases.ts';
import type { Rule } from '../rule.ts';
import type { Words } from '../told.ts';
import { sayPanels } from '../words.ts';

type Facts = OfPiece & Unheld;

export const notHeld: Rule<Facts> = {
  severity: 'error',
  summary: 'Every wall and floor is held: by glue, by a flap that is tucked in, or by the paper itself.',
  why: 'A box stands only as long as its walls cannot fall open again. Name what is meant to move, such as a lid, after `opens:`.',
  fails: { box: { glue: 'A4: D4, C4: D4, B4: D4' }, blames: 'box' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      const ownBases = endsWithOwnBase(context, sheet).flatMap(({ flaps }) =>
        flaps.map(({ panel }) => panel),
      );
      for (const part of unheldParts(sheet.shape, sheet.caliper)) {
        if (part.panels.every((panel) => ownBases.includes(panel))) continue;
        yield { at: sheet.at, facts: { ...sheet.of, ...part } };
      }
    }
  },
  say: (facts) => ({ ...sayWhat(facts), remedy: sayRemedy(facts) }),
};

function sayWhat({ kind, piece, panels, glue, covered }: Facts): Omit<Words, 'remedy'> {
  const [first = '', second = ''] = panels.map((panel) => `${piece}.${panel}`);
  const all = sayPanels(piece, panels);
  const are = panels.length > 1 ? 'are' : 'is';
  switch (kind) {
    case 'seam':
      return {
        message: `the walls of ${piece} go all the way around, but ${first} is stuck to nothing where it lies on ${second}`,
      };
    case 'no tab':
      return { message: `${first} and ${second} meet edge to edge, and no tab joins them` };
    case 'end':
      return {
        message: `${all} ${panels.length > 1 ? 'close' : 'closes'} an end of ${piece} and ${are} stuck to nothing: that end falls open`,
        ...(glue.length === 0 && { severity: 'warning' }),
      };
    case 'flaps':
      return covered
        ? { message: `${all} ${are} stuck to nothing, unlike the rest of that end`, severity: 'warning' }
        : { message: `${all} ${are} stuck to nothing, and the rest does not close that end` };
    case 'pocket':
      return {
        message: `${all} are folded in as the sides of a pocket are, and stuck to nothing: what is put in falls out`,
        severity: 'warning',
      };
    case 'panels':
      return panels.length > 1
        ? { message: `${all} meet, and nothing holds them together` }
        : { message: `${all} lies where it could be stuck, and nothing holds it` };
  }
}

function sayRemedy({ kind, panels, glue }: Facts): string {
  const [first = '', second = ''] = panels;
  if (kind === 'no tab')
    return `leave a glue tab on ${first} and stick it inside ${second}, or say under "folds:" that they fold less far`;
  const marks = glue.map(({ from, to }) => `${from}: ${to}`).join(', ');
  const tabs = panels.length > 1 ? 'leave glue tabs where they meet' : `leave a glue tab on ${first}`;
  const how = marks === '' ? tabs : `add "glue: { ${marks} }"`;
  return kind === 'seam' ? how : `${how}, or "opens: [${panels.join(', ')}]" where that is meant to open`;
}
