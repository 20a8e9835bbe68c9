import type { Rule } from '../rule.ts';

export const emptyFile: Rule = {
  severity: 'error',
  summary: 'A file of the workspace is not empty.',
  why: 'An empty file is most often one that was saved too early, or lost its text in a crash of the editor.',
  fails: { sheet: '' },
  passes: {},
  say: () => ({
    message: 'the file is empty',
    remedy: 'write the sheet, take its folder away, or begin anew with the command "draft"',
  }),
};
