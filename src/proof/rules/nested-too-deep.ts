import type { Rule } from '../rule.ts';

export const nestedTooDeep: Rule = {
  severity: 'error',
  summary: 'Lists, quotes and emphasis stand in one another a few levels deep at most.',
  why: 'A text that is nested a hundred levels deep was not meant so: it is a slip of a program that wrote it, or of pasting. It would be set in a column too narrow for a word.',
  fails: { body: `## Cut\n${'> '.repeat(120)}Cut slowly.\n`, blames: '>' },
  passes: { body: '## Cut\n> > Cut slowly.\n' },
  say: () => ({
    message: 'the text is nested more than a hundred levels deep here, so nothing of it can be read',
    remedy: 'take out the marks (">", "-", "*") that put it so deep',
  }),
};
