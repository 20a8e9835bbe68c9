import type { Length } from '../../measure/length.ts';
import { foldedLength } from '../../measure/round.ts';
import { allMeet } from '../../shape/closure/glue.ts';
import { type Protrusion, protrusions } from '../../shape/closure/protrusion.ts';
import {
  type Better,
  closedSheets,
  type FoldedSheet,
  type OfPiece,
  refoldedLine,
  sayRefold,
} from '../folded-sheets.ts';
import type { Evidence, Rule } from '../rule.ts';
import { sayLength, sayList, sayPanels } from '../words.ts';

type Facts = OfPiece & TabsAndWalls & (TooWide | Leaning);

/** Tabs, and what they are stuck to. */
type TabsAndWalls = { readonly tabs: readonly string[]; readonly walls: readonly string[] };

/** Tabs that are too wide by the same. */
type TooWide = { readonly by: Length };

/** All that stick out because a wall leans, and how its score line would have to be folded. */
type Leaning = { readonly fold: string; readonly better: Better };

export const glueSticksOut: Rule<Facts> = {
  severity: 'error',
  summary: 'No glue tab sticks out past what it is stuck to.',
  why: 'What sticks out of a seam shows, or gets in the way of the next wall. A tab is at most as wide as the wall it is stuck to.',
  fails: { box: { cut: '10 x 6 3/4' }, blames: 'tab: A3' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of closedSheets(context)) {
      const sticking = protrusions(sheet.shape, sheet.caliper);
      const leaning = leaningWall(sheet, sticking);
      if (leaning) {
        yield leaning;
        continue;
      }
      const found = sticking.map((each) => ({ ...each, by: foldedLength(each.by) }));
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
  say: (facts) => {
    const { piece, tabs, walls, unit } = facts;
    const [all, under] = [tabs, walls].map((panels) => sayPanels(piece, panels));
    const [stick, it] = tabs.length > 1 ? ['stick', 'they are'] : ['sticks', 'it is'];
    if ('fold' in facts) {
      return {
        message: `as ${facts.fold} is folded, ${all} ${stick} out past ${under}, which ${it} stuck to`,
        remedy: sayRefold(facts.fold, facts.better),
      };
    }
    const by = sayLength(facts.by, unit);
    return {
      message: `${all} ${stick} out ${by} past ${under}, which ${it} stuck to`,
      remedy: `make ${sayList(tabs)} at least ${by} smaller`,
    };
  },
};

/** The wall that is folded neither square nor flat, if nothing sticks out once it is. */
function leaningWall(sheet: FoldedSheet, found: readonly Protrusion[]): Evidence<Facts> | undefined {
  if (found.length === 0) return undefined;
  const { caliper } = sheet;
  const [tabs, walls] = [found.map(({ tab }) => tab), [...new Set(found.map(({ wall }) => wall))]];
  const line = refoldedLine(
    sheet,
    tabs,
    (shape) => allMeet(shape, caliper) && protrusions(shape, caliper).length === 0,
    ({ angle }) => angle % 90 !== 0,
  );
  if (!line) return undefined;
  const { name: fold, better, at = found[0]?.mate.at ?? sheet.at } = line;
  return { at, facts: { ...sheet.of, tabs, walls, fold, better } };
}
