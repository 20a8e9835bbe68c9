import type { Rule } from '../rule.ts';

export const brokenYaml: Rule<{ readonly problem: string; readonly remedy?: string }> = {
  severity: 'error',
  summary:
    'The block at the head of a sheet can be read: brackets, quotation marks and indents are in order.',
  why: 'One quotation mark left open, and everything behind it is read as something else. Nothing of such a block is trusted; the last good sheet stays as it was.',
  fails: { head: 'summary: A card: to try', blames: 'A' },
  passes: { head: 'summary: "A card: to try"' },
  say: ({ problem, remedy }) => ({
    message: `the block at the head cannot be read: ${problem}`,
    remedy: remedy ?? 'put this line right first; everything below it may only look wrong because of it',
  }),
};
