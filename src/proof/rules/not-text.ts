import type { Rule } from '../rule.ts';

export const notText: Rule = {
  severity: 'error',
  summary: 'A sheet is a plain text file.',
  why: 'A word processor file, a picture or a zipped folder that is merely named `sheet.md` holds no text that can be read.',
  fails: { sheet: 'PK\u0003\u0004\u0000\u0000\u0000' },
  passes: {},
  say: () => ({
    message: 'the file is no plain text',
    remedy: 'save it from a text editor as plain text (UTF-8)',
  }),
};
