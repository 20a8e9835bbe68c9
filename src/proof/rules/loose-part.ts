import { panelForest } from '../../shape/panel-tree.ts';
import { foldedSheets } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayList } from '../words.ts';

type Facts = {
  readonly sheet: string;
  /** The panels that hang together, and on nothing else. */
  readonly panels: readonly string[];
};

export const loosePart: Rule<Facts> = {
  severity: 'error',
  summary: 'Every folded piece is one piece of paper.',
  why: 'One slit too many, or a trim in the wrong place, and part of the box falls off with the last cut. Nobody sees it in a list of score lines; everybody sees it on the table.',
  fails: { box: { slit: 'A|B 1-2, B|C 1-2, C|D 1-2, A|B 4, B|C 4, C|D 4, 3|4 B' }, blames: 'box' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of foldedSheets(context)) {
      const [, ...loose] = panelForest(sheet.net, sheet.shape.base).trees;
      for (const { root, joints } of loose) {
        const panels = [root, ...joints.map(({ child }) => child)];
        yield { at: sheet.at, facts: { sheet: sheet.name, panels } };
      }
    }
  },
  say: ({ sheet, panels }) => {
    const [verb, pronoun] = panels.length === 1 ? ['is', 'it'] : ['are', 'them'];
    return {
      message: `${sayList(panels)} of ${sheet} ${verb} cut off from the rest by slits and trims`,
      remedy: `leave one edge of ${pronoun} uncut, or trim ${pronoun} off`,
    };
  },
};
