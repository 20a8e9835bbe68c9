import type { Rule } from '../rule.ts';

export const unreadableFile: Rule<{ readonly problem: string }> = {
  severity: 'error',
  summary: 'Every file of the workspace can be opened.',
  why: 'A file that may not be read, or is a folder by mistake, is reported at once, not skipped.',
  fails: { sheet: '', files: { 'card/sheet.md/notes.txt': 'sheet.md is a folder here' } },
  passes: {},
  say: ({ problem }) => ({
    message: `the file cannot be opened: ${problem}`,
    remedy: 'see that it is a file and that you may read it',
  }),
};
