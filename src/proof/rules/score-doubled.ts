import { sheetWith } from '../example.ts';
import type { Rule } from '../rule.ts';

const folded = (groups: string): string =>
  sheetWith({ pieces: `fold: { stock: cream, cut: 8 1/2 x 5 1/2, score: [${groups}] }` });

export const scoreDoubled: Rule<'score-doubled'> = {
  id: 'score-doubled',
  severity: 'error',
  summary: 'No line is scored twice.',
  why: 'The same line said twice, once from each edge perhaps, makes people look for a second line that is not there. A line scored twice also cracks.',
  fails: { sheet: folded('{ from: left, at: [4 1/4] }, { from: right, at: [4 1/4] }'), blames: '4 1/4' },
  passes: { sheet: folded('{ from: left, at: [4 1/4] }, { from: right, at: [4] }') },
};
