import type { Length } from '../../measure/length.ts';
import { rulerOf, say } from '../../shape/forming/ruler.ts';
import type { ScoredAt } from '../../shape/score-lines.ts';
import type { Rule } from '../rule.ts';

/** And the larger position that stands before it. */
type Facts = ScoredAt & { readonly before: Length };

export const scoreOrder: Rule<Facts> = {
  severity: 'warning',
  summary: 'Score positions are in the order in which they come along the board.',
  why: 'The list is read out while people score from left to right. A position that jumps back is usually a mistyped number.',
  fails: {
    pieces: 'fold: { stock: cream, cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [4 1/4, 1, 6] }] }',
    blames: '1',
  },
  passes: { with: '1, 4 1/4', insteadOf: '4 1/4, 1' },
  say: ({ piece, from, position, before, unit }) => ({
    message: `the scores of ${piece} from the ${from} are out of order: ${say(rulerOf(unit), before)} comes before ${say(rulerOf(unit), position)}`,
    remedy: 'list the positions from smallest to largest, as they are scored along the board',
  }),
};
