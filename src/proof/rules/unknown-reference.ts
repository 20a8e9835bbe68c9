import { nameRemedy } from '../../shape/nearest.ts';
import { sheetWith } from '../example.ts';
import { partNames } from '../part-names.ts';
import { everyProse } from '../prose.ts';
import type { ProofContext, Rule } from '../rule.ts';
import { quote } from '../words.ts';

declare module '../../project/finding.ts' {
  interface Facts {
    readonly 'unknown-reference': {
      /** The kind of thing: `piece`, `stock`, `panel`. */
      readonly what: string;
      readonly name: string;
      /** The names that are there. */
      readonly among: readonly string[];
    };
  }
}

export const unknownReference: Rule<'unknown-reference'> = {
  id: 'unknown-reference',
  severity: 'error',
  summary: 'Every piece, panel, stock and shared value that is named is there.',
  why: 'A piece stuck on something that is not in the sheet, a step that names a piece by a word of last year: whoever follows the sheet looks for it in vain.',
  fails: {
    sheet: sheetWith({
      pieces: 'card: { stock: cream, cut: 4 x 5 }\nfront: { stock: cream, cut: 3 x 4, on: cart }',
    }),
    blames: 'cart',
  },
  passes: {
    sheet: sheetWith({
      pieces: 'card: { stock: cream, cut: 4 x 5 }\nfront: { stock: cream, cut: 3 x 4, on: card }',
    }),
  },
  ownEditionOnly: true,
  check: ({ project, shapes, report }: ProofContext) => {
    for (const { name } of everyProse(project).flatMap(({ references }) => references)) {
      const [piece = '', panel] = name.value.split('.');
      const panels = partNames(shapes, piece);
      if (panel === undefined || panels.length === 0 || panels.includes(panel)) continue;
      report({
        message: `${piece} has no panel ${quote(panel)}`,
        remedy: nameRemedy(panel, panels),
        at: { ...name.at, start: name.at.start + piece.length + 1 },
      });
    }
  },
  say: ({ what, name, among }) => ({
    message: `there is no ${what} ${quote(name)}`,
    remedy: nameRemedy(name, among),
  }),
};
