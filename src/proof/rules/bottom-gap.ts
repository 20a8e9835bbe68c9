import type { Length } from '../../measure/length.ts';
import { type EndGap, endGap, tubeEnds } from '../../shape/closure/ends.ts';
import { boxWith } from '../example-box.ts';
import { closedSheets, type FoldedSheet, panelName } from '../folded-sheets.ts';
import type { ProofContext, Rule, Statement } from '../rule.ts';
import { foldPlace } from '../score-place.ts';
import { sayLength, sayList } from '../words.ts';

export const bottomGap: Rule<'bottom-gap'> = {
  id: 'bottom-gap',
  severity: 'error',
  summary: 'Flaps that close an end of a box meet or overlap.',
  why: 'Flaps that are too short leave a slot through which whatever the box holds falls out, or a lid that lets dust in.',
  fails: { sheet: boxWith({ bottom: '1 1/4, 5 5/8, 6 1/8' }), blames: '5 5/8' },
  passes: { sheet: boxWith() },
  check: ({ project, shapes, report }: ProofContext) => {
    for (const sheet of closedSheets(project, shapes)) {
      for (const end of tubeEnds(sheet.net)) {
        const gap = endGap(sheet.net, end, sheet.caliper);
        if (gap) report(words(sheet, gap, (length) => sayLength(length, project.unit)));
      }
    }
  },
};

function words(
  sheet: FoldedSheet,
  { flaps, across, gap }: EndGap,
  say: (length: Length) => string,
): Statement {
  const [first] = flaps;
  const names = flaps.map(({ panel, depth }) => `${panelName(sheet, panel)} (${say(depth)})`);
  const share =
    flaps.length > 1 ? `each ${say(gap.half())} longer, or one of them ${say(gap)}` : `${say(gap)} longer`;
  return {
    message: `${sayList(names)} leave${flaps.length > 1 ? '' : 's'} a gap of ${say(gap)} across ${say(across)}`,
    remedy: `make ${sayList(flaps.map(({ panel }) => panel))} ${share}`,
    ...(first && { at: foldPlace(sheet, first.fold) }),
  };
}
