import type { Place } from '../../project/source.ts';
import type { Rule } from '../rule.ts';
import type { Words } from '../told.ts';

type Facts = { readonly piece: string; readonly wrong: WrongAngle };

/** Lines are named as they are written: `corner B3 to corner C2`. */
type WrongAngle =
  | { readonly kind: 'no length' | 'level' | 'twice'; readonly name: string }
  | {
      readonly kind: 'crossed';
      readonly name: string;
      readonly other: { readonly name: string; readonly at: Place };
    };

export const angledScore: Rule<Facts> = {
  severity: 'error',
  summary: 'A score line at an angle runs from one corner to another, and through no other such line.',
  why: 'Paper that is folded along two lines that cross gives way at the crossing in a fourth direction. A line parallel to the edges is scored on the board, and is given from an edge.',
  fails: {
    pieces:
      'fan: { stock: cream, cut: 4 x 4, score: [{ from: left, at: 2 }, { from: corner A1, to: corner A1 bottom right }, { from: corner A1 top right, to: corner A1 bottom left }] }',
    blames: 'corner A1 bottom left',
  },
  passes: {
    with: 'corner B1 top right, to: corner B1 bottom left',
    insteadOf: 'corner A1 top right, to: corner A1 bottom left',
  },
  say: ({ piece, wrong }) => sayWrong(piece, wrong),
};

function sayWrong(piece: string, wrong: WrongAngle): Words {
  const { name } = wrong;
  switch (wrong.kind) {
    case 'no length':
      return {
        message: `the line of ${piece} from ${name} ends where it begins`,
        remedy: 'name another corner',
      };
    case 'twice':
      return { message: `${piece} is scored twice from ${name}`, remedy: 'delete one of them' };
    case 'level':
      return {
        message: `the line of ${piece} from ${name} runs straight along the sheet`,
        remedy:
          'score it from an edge, such as { from: left, at: 2 }, and say under "folds:" where there is none',
      };
    case 'crossed':
      return {
        message: `the line of ${piece} from ${name} crosses that from ${wrong.other.name}`,
        remedy: 'let a score line from an edge pass through the crossing, and end all four there',
        notes: [{ message: `the other is from ${wrong.other.name}`, at: wrong.other.at }],
      };
  }
}
