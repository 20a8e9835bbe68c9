import type { At } from '../../project/source.ts';
import type { Rule } from '../rule.ts';

type Facts = {
  /** Each piece of the circle, lying on the next and the last on the first, at the name of its base. */
  readonly circle: readonly At<string>[];
};

export const circularBase: Rule<Facts> = {
  severity: 'error',
  summary: 'No piece is its own base, directly or through other pieces.',
  why: 'When a layer is on a base that is on the layer, nobody can say which is stuck on first, and no border can be worked out.',
  fails: {
    pieces: 'mat: { stock: cream, cut: 4 x 5, on: front }\nfront: { stock: cream, cut: 3 x 4, on: mat }',
    blames: 'front',
  },
  passes: { with: '', insteadOf: ', on: front' },
  say: ({ circle }) => {
    const names = circle.map(({ value }) => value);
    const [first = ''] = names;
    return {
      message:
        circle.length === 1
          ? `${first} is its own base`
          : `${names.map((name, index) => `${name} is on ${names[index + 1] ?? first}`).join(', and ')}: one of them needs another base`,
      remedy: 'name another piece after "on:", or delete one "on:"',
      notes: circle.slice(1).map(({ value, at }, index) => ({
        message: `${value} is on ${names[index + 2] ?? first}`,
        at,
      })),
    };
  },
};
