import type { Rule } from '../rule.ts';
import { quote } from '../words.ts';

export const missingPicture: Rule<{ readonly path: string }> = {
  severity: 'error',
  summary: 'Every picture a sheet shows exists.',
  why: 'A step that says "as in the picture" is no use without it. On most servers capital letters matter in a file name, even if they don\'t at home.',
  fails: { body: '## Cut\n![The card, cut](photos/cut.jpg)\n', blames: 'photos/cut.jpg' },
  passes: { body: '## Cut\n![The card, cut](photos/cut.jpg)\n', files: { 'card/photos/cut.jpg': '' } },
  say: ({ path }) => ({
    message: `there is no picture ${quote(path)} in this project's folder`,
    remedy: 'put the file there, or fix its name (capital letters matter)',
  }),
};
