import type { LengthProblem } from '../../measure/notation.ts';
import type { Rule } from '../rule.ts';
import { quote } from '../words.ts';

type Facts = {
  readonly text: string;
  readonly problem: LengthProblem;
  /** The key it follows. */
  readonly what: string;
  /** How many lengths belong there. */
  readonly count: 1 | 2 | 3;
};

export const unreadableLength: Rule<Facts> = {
  severity: 'error',
  summary: 'Every measurement can be read, is more than zero and at most one meter.',
  why: 'Lengths are read exactly as typed: `2 1/4`, `2-1/4`, `2¼`, `2.25`, `2 1/4 in`, `57 mm`, `5.7 cm` or `5,7 cm`; sizes as `3 x 4`. What cannot be read is never guessed at, because fifty people would cut by the guess.',
  fails: { pieces: 'front: { stock: cream, cut: 3 1/0 x 4 }', blames: '3 1/0' },
  passes: { with: '3 1/2', insteadOf: '3 1/0' },
  say: ({ text, problem, what, count }) => {
    const [said, remedy] = WORDS[/\d/u.test(text) || problem === 'empty' ? problem : 'not a length'];
    return {
      message: `${what}: ${text === '' ? 'nothing' : quote(text)} ${said}`,
      remedy: remedy ?? SHAPES[count],
    };
  },
};

/** What is wrong, said of the quoted text; and what would put it right. */
const WORDS: Readonly<Record<LengthProblem, readonly [said: string, remedy?: string]>> = {
  empty: ['stands here where a measurement belongs', 'write it in figures, such as 2 1/4'],
  'not a length': [
    'is no measurement',
    'write it in figures, such as 2 1/4 or 2.25, with in, mm or cm if it needs a unit',
  ],
  'comma of a thousand': [
    'may be a thousand or a decimal',
    'write a thousand without a comma, a decimal with a point',
  ],
  'denominator of zero': ['divides by zero', 'put another number under the fraction bar, such as 1/2'],
  negative: ['is less than zero', 'leave out the minus sign: a measurement is always more than zero'],
  zero: ['measures nothing', 'write what it measures, or leave the whole entry out'],
  'too long': ['is longer than 1 m (39 3/8 in)', 'look for a missing space, fraction bar or decimal point'],
  'too many sizes': ['has more measurements than belong here'],
  'too few sizes': ['has fewer measurements than belong here'],
};

/** How so many lengths are written. */
const SHAPES: Readonly<Record<1 | 2 | 3, string>> = {
  1: 'write one length, such as 1/2',
  2: 'write width x height, such as 3 1/2 x 4',
  3: 'write three lengths, such as 3 1/2 x 1 x 4 3/4',
};
