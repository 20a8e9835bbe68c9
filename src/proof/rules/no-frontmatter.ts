import type { Rule } from '../rule.ts';

export const noFrontmatter: Rule = {
  severity: 'error',
  summary: 'A sheet begins with a block between two lines of `---`.',
  why: 'The title, the date and every measurement are in that block. Without it there is nothing to cut and nothing to check.',
  fails: { sheet: '# A card\nCut two pieces.\n', blames: '# A card' },
  passes: {},
  say: () => ({
    message: 'the sheet does not begin with a block between two lines of ---',
    remedy:
      'put a line with three hyphens first, then "title:" and "measurements:", then three hyphens again',
  }),
};
