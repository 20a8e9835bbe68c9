import type { Length } from '../../measure/length.ts';
import type { At } from '../../project/source.ts';
import { rulerOf, say } from '../../shape/forming/ruler.ts';
import type { ScoredAt } from '../../shape/score-lines.ts';
import type { Rule } from '../rule.ts';

/** And what the piece measures there. */
type Facts = ScoredAt & { readonly extent: At<Length>; readonly pieceIs: 'wide' | 'high' };

export const scoreOutside: Rule<Facts> = {
  severity: 'error',
  summary: 'Every score line is inside its piece.',
  why: 'A score at or beyond the edge of the paper cannot be made. Usually the piece was cut down and the score list forgotten, or the position was measured from the other edge.',
  fails: {
    pieces: 'fold: { stock: cream, cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [4 1/4, 8 3/4] }] }',
    blames: '8 3/4',
  },
  passes: { with: '8 1/4', insteadOf: '8 3/4' },
  say: ({ piece, from, position, extent, pieceIs, unit }) => {
    const excess = position.minus(extent.value);
    const [at, size, by] = [position, extent.value, excess].map((each) => say(rulerOf(unit), each));
    const lies = excess.sign === 0 ? 'is the edge of' : `lies ${by} outside`;
    return {
      message: `the score line at ${at} from the ${from} ${lies} ${piece}, which is ${size} ${pieceIs}`,
      remedy: `score it at less than ${size}, or cut the piece larger`,
      notes: [{ message: `${piece} is ${size} ${pieceIs}`, at: extent.at }],
    };
  },
};
