import type { Length } from '../../measure/length.ts';
import { foldedLength, nextMark } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import { holeIn } from '../../shape/closure/end-cover.ts';
import { type EndFlap, endGap, type TubeEnd, tubeEnds } from '../../shape/closure/ends.ts';
import { hasOutwardFlap } from '../../shape/closure/wrong-way.ts';
import { closedSheets, type FoldedSheet, foldPlace, type OfPiece } from '../folded-sheets.ts';
import { endsWithOwnBase } from '../own-bases.ts';
import type { Rule } from '../rule.ts';
import { sayLength, sayLengths, sayList, sayPanels } from '../words.ts';

/** What flaps leave open: a slot between facing walls, or a hole in an end of another shape. */
type Facts = OfPiece & { readonly flaps: readonly FlapDepth[] } & (OpenSlot | OpenHole);

type FlapDepth = { readonly panel: string; readonly depth: Length };

type OpenSlot = { readonly across: Length; readonly gap: Length };

/** How large it is, and how much longer the flaps would have to be. */
type OpenHole = { readonly hole: readonly [Length, Length]; readonly lack: Length };

export const bottomGap: Rule<Facts> = {
  severity: 'error',
  summary: 'Flaps that close an end of a box meet or overlap.',
  why: 'Flaps that are too short leave a slot that things fall out of, or a lid that lets dust in.',
  fails: { box: { bottom: '1 1/4, 5 5/8, 6 1/8' }, blames: '5 5/8' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      const closed = endsWithOwnBase(context, sheet).map(({ end }) => end);
      for (const end of tubeEnds(sheet.net)) {
        if (closed.includes(end.end)) continue;
        // A flap that is folded out leaves a gap that no length of it would close.
        if (hasOutwardFlap(sheet.net, end)) continue;
        for (const { flaps, open } of openIn(sheet, end)) {
          const [first] = flaps;
          const at = first ? foldPlace(sheet, first.fold) : sheet.at;
          const depths = flaps.map(({ panel, depth }) => ({ panel, depth }));
          yield { at, facts: { ...sheet.of, flaps: depths, ...open } };
        }
      }
    }
  },
  say: (facts) => {
    const { piece, flaps, unit } = facts;
    const say = (length: Length): string => sayLength(length, unit);
    const panels = sayList(flaps.map(({ panel }) => panel));
    if ('hole' in facts) {
      const all = flaps.map(({ panel }) => panel);
      return {
        message: `${sayPanels(piece, all)} leave a hole of ${sayLengths(facts.hole, unit)} in the end they close`,
        remedy: `make ${panels} at least ${say(facts.lack)} longer`,
      };
    }
    const names = sayList(flaps.map(({ panel, depth }) => `${piece}.${panel} (${say(depth)})`));
    const leave = flaps.length > 1 ? 'leave' : 'leaves';
    const { gap, across } = facts;
    const share =
      flaps.length > 1 ? `each ${say(gap.half())} longer, or one of them ${say(gap)}` : `${say(gap)} longer`;
    return {
      message: `${names} ${leave} a gap of ${say(gap)} across ${say(across)}`,
      remedy: `make ${panels} ${share}`,
    };
  },
};

/** What an end leaves open, if anything, and the flaps that do. */
function openIn(
  { net, shape, caliper, of }: FoldedSheet,
  end: TubeEnd,
): readonly { readonly flaps: readonly EndFlap[]; readonly open: OpenSlot | OpenHole }[] {
  const found = endGap(net, end, caliper);
  if (found) return [{ flaps: found.flaps, open: { across: found.across, gap: found.gap } }];
  const marked = (mm: number): Length => nextMark(foldedLength(mm), rulerUnit(of.unit));
  const hole = holeIn(shape, end, caliper);
  if (!hole) return [];
  const [long, short] = hole.size;
  return [{ flaps: end.flaps, open: { hole: [marked(long), marked(short)], lack: marked(hole.lack) } }];
}
