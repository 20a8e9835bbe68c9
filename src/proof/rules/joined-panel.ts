import type { Rule } from '../rule.ts';
import { sayList } from '../words.ts';

type Facts = {
  readonly piece: string;
  readonly panel: string;
  /** Lines that are still there within it, as `folds:` names them; none where it goes all round other paper. */
  readonly lines: readonly string[];
};

export const joinedPanel: Rule<Facts> = {
  severity: 'error',
  summary: 'Cells with no line between them are one panel, with no fold in it and not all around another.',
  why: 'A panel is flat: where two cells become one around a corner, the line that is still between them cannot be folded. Nor can paper that others surround on all sides be folded out of them.',
  fails: {
    pieces:
      'card: { stock: cream, cut: 4 x 4, score: [{ from: left, at: 2 }, { from: top, at: 2 }], panels: { front: A1 }, folds: { A1|A2: none, A1|B1: none, B1|B2: none } }',
    blames: 'B1|B2: none',
  },
  passes: { with: 'B1|B2: none, A2|B2: none', insteadOf: 'B1|B2: none' },
  say: ({ piece, panel, lines }) => {
    const none = lines.map((line) => `${line}: none`).join(', ');
    return lines.length > 0
      ? {
          message: `${sayList(lines)} of ${piece} would be folded within ${panel}, which is one panel`,
          remedy: `say "${none}" under "folds:" too, or slit it there`,
        }
      : {
          message: `${panel} of ${piece} goes all the way around other panels`,
          remedy: 'let a score line stand somewhere in it',
        };
  },
};
