import type { Rule } from '../rule.ts';
import { quote } from '../words.ts';

type Facts = { readonly variant: string; readonly path: readonly string[] };

export const variantSaysCommon: Rule<Facts> = {
  severity: 'note',
  summary: 'A variant names only what is its own.',
  why: 'What a variant does not name is the same for all. A value that repeats the common one says nothing, and is left behind when the common one changes.',
  fails: {
    pieces: 'card: { stock: cream, cut: 4 x 5 }',
    more: 'variants:\n  small: { card.cut: 3 x 4 }\n  large: { card.cut: 4 x 5 }',
    blames: 'cut',
  },
  passes: { with: 'large: {}', insteadOf: 'large: { card.cut: 4 x 5 }' },
  say: ({ variant, path }) => ({
    message: `${quote(variant)} gives ${quote(path.join('.'))} the value that it has anyway`,
    remedy: `take it out of ${quote(variant)}, or change it`,
  }),
};
