import type { Rule } from '../rule.ts';

export const unreadablePicture: Rule<{ readonly path: string; readonly problem: string }> = {
  severity: 'error',
  summary:
    'A picture is a photo that can be opened: complete, of ordinary size, and not a drawing that could carry a script.',
  why: 'A photo that was cut short while it was copied shows gray where the rest should be. A picture of a hundred thousand pixels a side is not a photo but a trap for whoever opens it. Pictures are checked when a project is made, not when it is only proofed.',
  fails: {
    body: '![The card](photos/torn.jpg)',
    files: { 'card/photos/torn.jpg': 'torn' },
    blames: 'photos/torn.jpg',
  },
  passes: {},
  say: ({ path, problem }) => ({
    message: `${path} cannot be shown: ${problem}`,
    remedy: 'save it again as a JPEG or PNG of ordinary size',
  }),
};
