import type { Rule } from '../rule.ts';

export const emptyFile: Rule = {
  severity: 'error',
  summary: 'A file of the workspace is not empty.',
  why: 'An empty file was usually saved too early, or lost its text when the editor crashed.',
  fails: { sheet: '' },
  passes: {},
  say: () => ({
    message: 'the file is empty',
    remedy: 'write what belongs in it, or delete it',
  }),
};
