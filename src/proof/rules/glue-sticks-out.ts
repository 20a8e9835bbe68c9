import type { Length } from '../../measure/length.ts';
import { foldedLength } from '../../measure/round.ts';
import { protrusions } from '../../shape/closure/protrusion.ts';
import { closedSheets, type OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayLength, sayList, sayPanels } from '../words.ts';

/** Tabs that are too wide by the same, and what they are stuck to. */
type Facts = OfPiece & {
  readonly tabs: readonly string[];
  readonly walls: readonly string[];
  readonly by: Length;
};

export const glueSticksOut: Rule<Facts> = {
  severity: 'error',
  summary: 'No glue tab sticks out past what it is stuck to.',
  why: 'What sticks out of a seam shows, or gets in the way of the next wall. A tab is at most as wide as the wall it is stuck to.',
  fails: { box: { cut: '10 x 6 3/4' }, blames: 'tab: A3' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      const found = protrusions(sheet.shape, sheet.caliper).map((each) => ({
        ...each,
        by: foldedLength(each.by),
      }));
      for (const by of new Set(found.map((each) => String(each.by)))) {
        const alike = found.filter((each) => String(each.by) === by);
        const [first] = alike;
        if (!first) continue;
        const tabs = alike.map(({ tab }) => tab);
        const walls = [...new Set(alike.map(({ wall }) => wall))];
        yield { at: first.mate.at ?? sheet.at, facts: { ...sheet.of, tabs, walls, by: first.by } };
      }
    }
  },
  say: ({ piece, tabs, walls, by, unit }) => {
    const [all, under] = [tabs, walls].map((panels) => sayPanels(piece, panels));
    const [stick, it] = tabs.length > 1 ? ['stick', 'they are'] : ['sticks', 'it is'];
    return {
      message: `${all} ${stick} out ${sayLength(by, unit)} past ${under}, which ${it} stuck to`,
      remedy: `make ${sayList(tabs)} at least ${sayLength(by, unit)} smaller`,
    };
  },
};
