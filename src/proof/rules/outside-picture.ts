import type { Rule } from '../rule.ts';
import { quote } from '../words.ts';

export const outsidePicture: Rule<{ readonly path: string }> = {
  severity: 'error',
  summary: "Every picture is in the project's own folder.",
  why: 'A sheet must be whole when its folder is copied to another computer, and nothing is fetched from the network when a sheet is made or read.',
  fails: {
    body: '## Cut\n![The card, cut](../other/photos/cut.jpg)\n',
    files: { 'other/photos/cut.jpg': '' },
    blames: '../other/photos/cut.jpg',
  },
  passes: { body: '## Cut\n![The card, cut](photos/cut.jpg)\n', files: { 'card/photos/cut.jpg': '' } },
  say: ({ path }) => ({
    message: `the picture ${quote(path)} is not in this project's folder`,
    remedy: 'copy it into photos/ and name it from there, such as photos/flat.jpg',
  }),
};
