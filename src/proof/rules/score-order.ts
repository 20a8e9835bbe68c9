import { sheetWith } from '../example.ts';
import type { Rule } from '../rule.ts';

const folded = (positions: string): string =>
  sheetWith({
    pieces: `fold: { stock: cream, cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [${positions}] }] }`,
  });

export const scoreOrder: Rule<'score-order'> = {
  id: 'score-order',
  severity: 'warning',
  summary: 'Score positions stand in the order in which they come along the board.',
  why: 'The list is read out while people score from left to right. One that jumps back is most often a slip of a number.',
  fails: { sheet: folded('4 1/4, 1, 6'), blames: '1' },
  passes: { sheet: folded('1, 4 1/4, 6') },
};
