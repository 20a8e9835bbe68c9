import { sheetWith } from '../example.ts';
import type { Rule } from '../rule.ts';

const box = (positions: string): string =>
  sheetWith({
    pieces: `fold: { stock: cream, cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [${positions}] }] }`,
  });

export const scoreOutside: Rule<'score-outside'> = {
  id: 'score-outside',
  severity: 'error',
  summary: 'Every score line lies inside its piece.',
  why: 'A score at or beyond the edge of the paper cannot be made. Usually the piece was cut down and the score list forgotten, or the position was measured from the other edge.',
  fails: { sheet: box('4 1/4, 8 3/4'), blames: '8 3/4' },
  passes: { sheet: box('4 1/4, 8 1/4') },
};
