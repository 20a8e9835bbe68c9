import type { Rule } from '../rule.ts';

export const internal: Rule<{ readonly reason: string }> = {
  severity: 'error',
  summary: 'The program itself has no bug.',
  why: 'When a part of the program breaks, what it should have said is missing. The other parts go on, and this finding names the broken one, so that it can be fixed.',
  say: ({ reason }) => ({
    message: reason,
    remedy: 'this is a mistake of Sheetwright, not yours: please report it together with the file',
  }),
};
