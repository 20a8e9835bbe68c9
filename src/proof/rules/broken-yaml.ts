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
  why: 'With one quotation mark left open, everything after it is read as something else. Nothing in such a block is trusted; the last good sheet stays as it was.',
  fails: { head: 'summary: A card: to try', blames: 'A' },
  passes: { head: 'summary: "A card: to try"' },
  say: ({ problem, remedy, isHead }) => ({
    message: `${isHead ? 'the settings block' : 'the file'} cannot be read: ${problem}`,
    remedy: remedy ?? 'fix this line first; everything below it may only look wrong because of it',
  }),
};
