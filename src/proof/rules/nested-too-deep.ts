import type { Rule } from '../rule.ts';

export const nestedTooDeep: Rule = {
  severity: 'error',
  summary: 'Lists, quotes and emphasis are nested only a few levels deep.',
  why: 'Nobody nests text a hundred levels deep on purpose: it comes from a program or from pasting. It would be set in a column too narrow for a word.',
  fails: { body: `## Cut\n${'> '.repeat(120)}Cut slowly.\n`, blames: '>' },
  passes: { body: '## Cut\n> > Cut slowly.\n' },
  say: () => ({
    message: 'the text is nested more than a hundred levels deep here, so none of it can be read',
    remedy: 'take out the marks (">", "-", "*") that put it so deep',
  }),
};
