import { brokenRings } from '../../shape/closure/sound.ts';
import { foldedSheets } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';

type Facts = {
  readonly sheet: string;
  /** The two panels the slit is to part. */
  readonly first: string;
  readonly second: string;
};

export const missingSlit: Rule<Facts> = {
  severity: 'error',
  summary: 'Where score lines cross, paper that must part is slit.',
  why: 'Four panels round one corner cannot all fold up: paper does not stretch. One of the lines between them must be a cut. Left out of the list, it shows only when the flaps will not fold.',
  fails: { box: { slit: 'A|B 1-2, B|C 1-2, C|D 1-2, B|C 4, C|D 4' }, blames: 'box' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of foldedSheets(context)) {
      for (const { panels } of brokenRings(sheet.shape)) {
        const [first, second] = panels;
        yield { at: sheet.at, facts: { sheet: sheet.name, first, second } };
      }
    }
  },
  say: ({ sheet, first, second }) => ({
    message: `${first} and ${second} of ${sheet} hang together, so that the panels round their corner cannot fold`,
    remedy: `slit the line between ${first} and ${second}`,
  }),
};
