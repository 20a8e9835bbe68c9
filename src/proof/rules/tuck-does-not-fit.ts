import type { Length } from '../../measure/length.ts';
import { endGap, longFlaps, shortLids, tubeEnds } from '../../shape/closure/ends.ts';
import { closedSheets, foldPlace, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OfPiece & {
  /** The lid, where it is too deep; the flap it ends in. */
  readonly lid?: string;
  readonly tuck: string;
  /** How deep the lid is, or how long the flap, and what there is to take it. */
  readonly depth: Length;
  readonly room: Length;
};

export const tuckDoesNotFit: Rule<Facts> = {
  severity: 'error',
  summary: 'A lid that is tucked in reaches the wall it goes behind, and its flap is shorter than the box.',
  why: 'If a lid is too deep, its tuck flap ends up outside the wall instead of behind it; if it is too short, it leaves a slot or pulls the wall in. A tuck flap longer than the box stands on the bottom before the lid is down.',
  fails: { tuckBox: { bottom: '1 1/2, 4 1/2, 6 1/8', cut: '7 1/2 x 6 3/4' }, blames: '6 1/8' },
  passes: { tuckBox: {} },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      for (const end of tubeEnds(sheet.net)) {
        const long = longFlaps(end, sheet.caliper);
        // Of an end that no flap covers, its gap says enough.
        const short = endGap(sheet.net, end, sheet.caliper) ? [] : shortLids(end, sheet.caliper);
        for (const flap of end.flaps) {
          const { panel, tuck } = flap;
          if (!tuck) continue;
          const at = foldPlace(sheet, tuck.fold);
          const facts = { ...sheet.of, tuck: tuck.panel };
          const misfit = [...long, ...short].find((each) => each.panel === panel);
          if (misfit) {
            const { depth, across: room } = misfit;
            yield { at, facts: { ...facts, lid: panel, depth, room } };
          } else if (tuck.depth.greaterThan(end.length.minus(sheet.caliper))) {
            yield { at, facts: { ...facts, depth: tuck.depth, room: end.length } };
          }
        }
      }
    }
  },
  say: ({ piece, lid, tuck, depth, room, unit }) => {
    const [deep, most, off] = [depth, room, depth.minus(room).abs()].map((each) => sayLength(each, unit));
    if (lid === undefined) {
      return {
        message: `${piece}.${tuck} is ${deep} long and the box only ${most} high`,
        remedy: `trim ${tuck} to less than ${most}`,
      };
    }
    const [than, outcome] = depth.greaterThan(room)
      ? ['more than', `ends up outside the wall`]
      : ['less than', `goes down in front of the wall, not behind it`];
    return {
      message: `${piece}.${lid} is ${deep} deep, ${off} ${than} the ${most} to the facing wall, so ${tuck} ${outcome}`,
      remedy: `make ${lid} ${most} deep: move the score line of ${tuck}`,
    };
  },
};
