import type { Length } from '../../measure/length.ts';
import { endGap, tubeEnds } from '../../shape/closure/ends.ts';
import { closedSheets, foldPlace, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength, sayList } from '../words.ts';

type Facts = OfPiece & {
  readonly flaps: readonly { readonly panel: string; readonly depth: Length }[];
  readonly across: Length;
  readonly gap: Length;
};

export const bottomGap: Rule<Facts> = {
  severity: 'error',
  summary: 'Flaps that close an end of a box meet or overlap.',
  why: 'Flaps that are too short leave a slot through which whatever the box holds falls out, or a lid that lets dust in.',
  fails: { box: { bottom: '1 1/4, 5 5/8, 6 1/8' }, blames: '5 5/8' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      for (const end of tubeEnds(sheet.net)) {
        const found = endGap(sheet.net, end, sheet.caliper);
        if (!found) continue;
        const [first] = found.flaps;
        const flaps = found.flaps.map(({ panel, depth }) => ({ panel, depth }));
        const at = first ? foldPlace(sheet, first.fold) : sheet.at;
        yield { at, facts: { ...sheet.of, flaps, across: found.across, gap: found.gap } };
      }
    }
  },
  say: ({ piece, flaps, across, gap, unit }) => {
    const say = (length: Length): string => sayLength(length, unit);
    const names = flaps.map(({ panel, depth }) => `${piece}.${panel} (${say(depth)})`);
    const share =
      flaps.length > 1 ? `each ${say(gap.half())} longer, or one of them ${say(gap)}` : `${say(gap)} longer`;
    return {
      message: `${sayList(names)} leave${flaps.length > 1 ? '' : 's'} a gap of ${say(gap)} across ${say(across)}`,
      remedy: `make ${sayList(flaps.map(({ panel }) => panel))} ${share}`,
    };
  },
};
