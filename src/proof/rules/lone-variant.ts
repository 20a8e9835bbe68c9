import type { Rule } from '../rule.ts';
import { quote } from '../words.ts';

type Facts = { readonly variant: string };

export const loneVariant: Rule<Facts> = {
  severity: 'note',
  summary: 'A project has two variants or more.',
  why: 'With only one variant, its values might as well be the common ones, and the sheet would be shorter.',
  fails: {
    pieces: 'card: { stock: cream, cut: 4 x 5 }',
    more: 'variants: { small: { card.cut: 3 x 4 } }',
    blames: 'small',
  },
  passes: { with: '3 x 4 }, large: {} }', insteadOf: '3 x 4 } }' },
  say: ({ variant }) => ({
    message: `${quote(variant)} is the only variant`,
    remedy:
      'write a second one, with {} if it has only the common values; or move its values to where the common ones are',
  }),
};
