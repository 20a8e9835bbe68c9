import { unheldParts } from '../../shape/closure/held.ts';
import { type LeftOut, leftOutFlaps } from '../../shape/closure/twins.ts';
import { gather } from '../../shape/pairs.ts';
import { closedSheets, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayList, sayPanels } from '../words.ts';

/** One flap, or several that are stuck to one panel on which they hang. */
type Facts = OfPiece & Omit<LeftOut, 'mate' | 'panel'> & { readonly panels: readonly string[] };

export const flapLeftOut: Rule<Facts> = {
  severity: 'warning',
  summary: 'Flaps that match are both stuck down, and every tab joins two panels.',
  why: 'With one side flap stuck down and the other forgotten, things fall out on that side. And a tab that is stuck to its own panel joins nothing.',
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
      const flaps = leftOutFlaps(sheet.net).filter(({ panel }) => !unheld.includes(panel));
      for (const like of gather(
        flaps.map((flap) => [flap]),
        areAlike,
      )) {
        const [first] = like;
        if (!first) continue;
        const { mate, panel: _, ...flap } = first;
        const facts = { ...sheet.of, ...flap, panels: like.map(({ panel }) => panel) };
        yield { at: mate?.at ?? sheet.at, facts };
      }
    }
  },
  say: ({ piece, panels, to, hangsThere, instead, twin }) => {
    const [are, hang, their] = panels.length > 1 ? ['are', 'they hang', 'their'] : ['is', 'it hangs', 'its'];
    const stuck = to === undefined ? 'nothing' : `${piece}.${to}${hangsThere ? `, which ${hang} on` : ''}`;
    const like = panels.length > 1 ? 'them' : 'it';
    const unlike = twin
      ? `, and ${twin.panel}, which is like ${like}, to ${twin.to}`
      : ': that joins nothing';
    const names = sayList(panels);
    if (instead !== undefined)
      return {
        message: `${sayPanels(piece, panels)} ${are} stuck to ${stuck}, the flap of ${instead}, and not to ${instead} itself: nothing is left to close it`,
        remedy: `stick ${names} to ${instead}`,
      };
    return {
      message: `${sayPanels(piece, panels)} ${are} stuck to ${stuck}${unlike}`,
      remedy:
        to === undefined
          ? `stick ${names} too, or say "opens: [${panels.join(', ')}]" where ${panels.length > 1 ? 'they are' : 'it is'} meant to hang loose`
          : `stick ${names} to ${twin?.to ?? `what lies on ${their} other side`}`,
    };
  },
};

/** Whether flaps join nothing in one and the same way, or are left out beside one and the same twin. */
function areAlike([one]: readonly LeftOut[], [other]: readonly LeftOut[]): boolean {
  if (!one || !other || one.to !== other.to || one.hangsThere !== other.hangsThere) return false;
  if (one.instead !== other.instead) return false;
  return one.hangsThere ? !one.twin && !other.twin : one.twin?.panel === other.twin?.panel;
}
