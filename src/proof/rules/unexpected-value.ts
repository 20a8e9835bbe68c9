import type { Rule } from '../rule.ts';
import { quote } from '../words.ts';

type Facts = {
  readonly key: string;
  /** What the key takes, in words. */
  readonly expected: string;
  /** What was written; empty where nothing was. */
  readonly actual: string;
};

export const unexpectedValue: Rule<Facts> = {
  severity: 'error',
  summary: 'Every value is of the kind that belongs behind its word.',
  why: 'Where a sheet asks for yes or no, a number of things or one of a few words, anything else would have to be guessed at.',
  fails: { pieces: 'front: { stock: cream, cut: 3 x 4, count: two }', blames: 'two' },
  passes: { with: '2', insteadOf: 'two' },
  say: ({ key, expected, actual }) => ({
    message: actual === '' ? `${quote(key)} is empty` : `${quote(key)} cannot be ${quote(actual)}`,
    remedy: expected.startsWith('to ') ? `it has ${expected}` : `write ${expected}`,
  }),
};
