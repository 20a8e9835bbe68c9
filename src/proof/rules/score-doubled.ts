import type { Length } from '../../measure/length.ts';
import type { Edge } from '../../project/net-as-written.ts';
import type { At } from '../../project/source.ts';
import { rulerOf, say } from '../../shape/forming/ruler.ts';
import type { ScoredAt } from '../../shape/score-lines.ts';
import type { Rule } from '../rule.ts';

/** And the line that was there before. */
type Facts = ScoredAt & { readonly first: { readonly from: Edge; readonly position: At<Length> } };

export const scoreDoubled: Rule<Facts> = {
  severity: 'error',
  summary: 'No line is scored twice.',
  why: 'The same line written twice, perhaps once from each edge, makes people look for a second line that is not there. A line scored twice also cracks.',
  fails: {
    pieces:
      'fold: { stock: cream, cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [4 1/4] }, { from: right, at: [4 1/4] }] }',
    blames: '4 1/4',
  },
  passes: { with: 'right, at: [4]', insteadOf: 'right, at: [4 1/4]' },
  say: ({ piece, from, position, first, unit }) => {
    const [again, before] = [
      `${say(rulerOf(unit), position)} from the ${from}`,
      `${say(rulerOf(unit), first.position.value)} from the ${first.from}`,
    ];
    return {
      message:
        again === before
          ? `${piece} is scored twice at ${again}`
          : `${piece} has the same score line twice: ${again} is also ${before}`,
      remedy: 'delete one of them',
      notes: [{ message: `the first is ${before}`, at: first.position.at }],
    };
  },
};
