import type { At } from '../../project/source.ts';
import type { Rule } from '../rule.ts';
import { quote } from '../words.ts';

type Facts = { readonly variant: string; readonly other: At<string> };

export const variantsAlike: Rule<Facts> = {
  severity: 'warning',
  summary: 'No two variants measure the same.',
  why: 'Two variants with the same values are printed as two, and readers cannot find what sets them apart. Usually a number was copied and not changed.',
  fails: {
    pieces: 'card: { stock: cream, cut: 4 x 5 }',
    more: 'variants:\n  small: { card.cut: 3 x 4 }\n  large: { card.cut: 3 x 4 in }',
    blames: 'large',
  },
  passes: { with: '4 x 5 in }', insteadOf: '3 x 4 in }' },
  say: ({ variant, other }) => ({
    message: `${quote(variant)} has the same values as ${quote(other.value)}`,
    remedy: `change a value of ${quote(variant)}, or take it out`,
    notes: [{ message: `${quote(other.value)} is written here`, at: other.at }],
  }),
};
