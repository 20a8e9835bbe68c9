import type { Rule } from '../rule.ts';

type Facts = {
  readonly problem: string;
  readonly remedy?: string;
  /** Whether it is the head of a sheet; else a whole file. */
  readonly isHead: boolean;
};

export const brokenYaml: Rule<Facts> = {
  severity: 'error',
  summary:
    'The block at the head of a sheet can be read: brackets, quotation marks and indents are in order.',
  why: 'One quotation mark left open, and everything behind it is read as something else. Nothing of such a block is trusted; the last good sheet stays as it was.',
  fails: { head: 'summary: A card: to try', blames: 'A' },
  passes: { head: 'summary: "A card: to try"' },
  say: ({ problem, remedy, isHead }) => ({
    message: `${isHead ? 'the block at the head' : 'the file'} cannot be read: ${problem}`,
    remedy: remedy ?? 'put this line right first; everything below it may only look wrong because of it',
  }),
};
