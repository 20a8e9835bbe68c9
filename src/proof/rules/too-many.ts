import type { Rule } from '../rule.ts';

export const tooMany: Rule<{ readonly what: string; readonly most: number }> = {
  severity: 'error',
  summary: 'A paragraph has no more than 1,000 marks such as "*", and a piece no more than 100 score lines.',
  why: 'So many come from a program or from pasting, and reading them would keep you waiting for minutes.',
  fails: { body: `## Cut\n${'*a* '.repeat(600)}\n`, blames: '*' },
  passes: { body: '## Cut\n*a* *b*\n' },
  say: ({ what, most }) => ({
    message: `there are too many ${what}: at most ${most} are read`,
    remedy: 'take out what is not meant, or divide it',
  }),
};
