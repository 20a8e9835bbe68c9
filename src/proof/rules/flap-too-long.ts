import type { Length } from '../../measure/length.ts';
import { foldedLength } from '../../measure/round.ts';
import { flapsSticking } from '../../shape/closure/end-cover.ts';
import { type EndFlap, longFlaps, type TubeEnd, tubeEnds } from '../../shape/closure/ends.ts';
import { overhangingFlaps } from '../../shape/closure/flat-flaps.ts';
import { closedSheets, type FoldedSheet, foldPlace, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength, sayList, sayPanels } from '../words.ts';

/** Flaps of one score line, which is too far away: one cause. */
type Facts = OfPiece & { readonly panels: readonly string[] } & (Deep | Beyond);

/** How long they are, and how far the facing wall is, or the panel reaches that they are folded flat on. */
type Deep = { readonly depth: Length; readonly across: Length; readonly on?: string };

/** How far they stick out between the other walls. */
type Beyond = { readonly by: Length };

export const flapTooLong: Rule<Facts> = {
  severity: 'error',
  summary: 'No flap is longer than the end it closes, or than what it is folded flat on.',
  why: 'A flap that is longer than the distance to the facing wall jams against it and will not lie flat, or sticks out past it. A flap that is longer than its envelope shows on the other side.',
  fails: { box: { bottom: '1 3/8, 5 1/2, 6 1/8' }, blames: '1 3/8' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      for (const end of tubeEnds(sheet.net)) {
        for (const { flaps, wrong } of longTogether(sheet, end)) {
          const [first] = flaps;
          const at = first ? foldPlace(sheet, first.fold) : sheet.at;
          yield { at, facts: { ...sheet.of, panels: flaps.map(({ panel }) => panel), ...wrong } };
        }
      }
      for (const { fold, panel, ...flap } of overhangingFlaps(sheet.net, sheet.caliper)) {
        yield { at: foldPlace(sheet, fold), facts: { ...sheet.of, panels: [panel], ...flap } };
      }
    }
  },
  say: (facts) => {
    const { piece, panels, unit } = facts;
    const [all, names] = [sayPanels(piece, panels), sayList(panels)];
    const are = panels.length > 1 ? 'are' : 'is';
    if ('by' in facts) {
      const stick = panels.length > 1 ? 'stick' : 'sticks';
      const [they, them] = panels.length > 1 ? ['they lie', 'them'] : ['it lies', 'it'];
      return {
        message: `${all} ${stick} out ${sayLength(facts.by, unit)} past the walls of the end`,
        remedy: `trim ${names} until ${they} inside the walls, or taper ${them}`,
      };
    }
    const { depth, across, on } = facts;
    const where = on === undefined ? 'to the facing wall' : `of ${piece}.${on}, which it is folded flat on`;
    const [reach, room, excess] = [depth, across, depth.minus(across)].map((each) => sayLength(each, unit));
    const edges =
      panels.length > 1 ? 'their score line or trim their edges' : 'its score line or trim its edge';
    return {
      message: `${all} ${are} ${reach} long, ${excess} more than the ${room} ${where}`,
      remedy: `make ${names} ${room} long at most: move ${edges}`,
    };
  },
};

type LongFlaps = { readonly flaps: readonly EndFlap[]; readonly wrong: Deep | Beyond };

/** The flaps of an end that are too long, those together that are wrong by the same. */
function longTogether({ shape, caliper }: FoldedSheet, end: TubeEnd): readonly LongFlaps[] {
  const deep = longFlaps(end, caliper)
    .filter(({ tuck }) => !tuck)
    .map((flap) => ({ flap, wrong: { depth: flap.depth, across: flap.across } }));
  const beyond = flapsSticking(shape, end, caliper).map(({ flap, by }) => ({
    flap,
    wrong: { by: foldedLength(by) },
  }));
  const found = new Map<string, { flaps: EndFlap[]; wrong: Deep | Beyond }>();
  for (const { flap, wrong } of [...deep, ...beyond]) {
    const key = Object.values(wrong).join(' ');
    const known = found.get(key);
    if (known) known.flaps.push(flap);
    else found.set(key, { flaps: [flap], wrong });
  }
  return [...found.values()];
}
