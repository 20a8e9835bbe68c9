import type { Rule } from '../rule.ts';
import { groupThousands } from '../words.ts';

type Facts = {
  readonly what: string;
  /** How many there are. */
  readonly count: number;
  /** How many there may be. */
  readonly most: number;
};

export const tooMany: Rule<Facts> = {
  severity: 'error',
  summary:
    'A paragraph has at most 1,000 marks such as "*", a text 1,000 quotes and notes and 1,000 rows of tables, a piece 100 score lines, 200 openings and 500 layers on it, a project 50 variants.',
  why: 'So many come from a program or from pasting, and reading them would keep you waiting for minutes.',
  fails: { body: `## Cut\n${'*a* '.repeat(600)}\n`, blames: '*' },
  passes: { body: '## Cut\n*a* *b*\n' },
  say: ({ what, count, most }) => ({
    message: `there are ${groupThousands(count)} ${what}, and there may be at most ${groupThousands(most)}`,
    remedy: 'take out what is not meant, or divide it',
  }),
};
