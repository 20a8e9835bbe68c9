import type { Rule } from '../rule.ts';

export const noSteps: Rule<{ readonly title: string; readonly depth: number }> = {
  severity: 'warning',
  summary: 'A sheet whose text has headings has steps.',
  why: 'Steps begin with ##. With # or ### instead, the whole text is the introduction: no step is numbered, timed or drawn.',
  fails: {
    pieces: 'card: { stock: cream, cut: 4 x 5 }',
    body: 'A card.\n\n### Cut it\nCut :piece[card].\n',
    blames: '### Cut it',
  },
  passes: { with: '## Cut it', insteadOf: '### Cut it' },
  say: ({ title, depth }) => ({
    message: `the sheet has no steps: "${title}" is a heading of level ${depth}, and a step begins with ##`,
    remedy: `write ## ${title}, and so for every step`,
  }),
};
