import type { Rule } from '../rule.ts';

export const tooMany: Rule<{ readonly what: string; readonly most: number }> = {
  severity: 'error',
  summary:
    'A paragraph has at most 1,000 marks such as "*", a text 1,000 quotes and notes, a piece 100 score lines, 200 openings and 500 layers on it, a project 50 variants.',
  why: 'So many come from a program or from pasting, and reading them would keep you waiting for minutes.',
  fails: { body: `## Cut\n${'*a* '.repeat(600)}\n`, blames: '*' },
  passes: { body: '## Cut\n*a* *b*\n' },
  say: ({ what, most }) => ({
    message: `there are more than ${most.toLocaleString('en-US')} ${what}, the most that are read`,
    remedy: 'take out what is not meant, or divide it',
  }),
};
