import type { Place } from '../../project/source.ts';
import type { Rule } from '../rule.ts';
import { quote } from '../words.ts';

type Facts = {
  readonly key: string;
  /** Where it stands first. */
  readonly first: Place;
};

export const repeatedKey: Rule<Facts> = {
  severity: 'error',
  summary: 'Nothing is written twice in one place.',
  why: 'Two pieces called `front`, or two sizes for one piece: only the first is read, and the second, perhaps the one you corrected last, is silently lost.',
  fails: {
    pieces: 'front: { stock: cream, cut: 3 x 4 }\nback: { stock: cream, cut: 3 x 4, cut: 3 x 5 }',
    blames: 'cut',
  },
  passes: { with: 'cut: 3 x 5', insteadOf: 'cut: 3 x 4, cut: 3 x 5' },
  say: ({ key, first }) => ({
    message: `${quote(key)} is written twice here; only the first is read`,
    remedy: 'delete one of them, or rename it',
    notes: [{ message: `${quote(key)} is first written here`, at: first }],
  }),
};
