import type { Rule } from '../rule.ts';
import { quote } from '../words.ts';

export const missingPicture: Rule<{ readonly path: string }> = {
  severity: 'error',
  summary: 'Every picture a sheet shows is there.',
  why: 'A step that says "as in the picture" is of no use without it. Capitals count in the name of a file on most servers, even where they don\'t at home.',
  fails: { body: '## Cut\n![The card, cut](photos/cut.jpg)\n', blames: 'photos/cut.jpg' },
  passes: { body: '## Cut\n![The card, cut](photos/cut.jpg)\n', files: { 'card/photos/cut.jpg': '' } },
  say: ({ path }) => ({
    message: `there is no picture ${quote(path)} in this project's folder`,
    remedy: 'put the file there, or mend its name: capitals count',
  }),
};
