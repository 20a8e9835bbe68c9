import type { At } from '../../project/source.ts';
import type { Rule } from '../rule.ts';

type Facts = {
  /** Each piece of the circle, lying on the next and the last on the first, at the name of its base. */
  readonly circle: readonly At<string>[];
};

export const circularBase: Rule<Facts> = {
  severity: 'error',
  summary: 'No piece lies on itself, neither directly nor by way of others.',
  why: 'Where a layer lies on a base that lies on the layer, nobody can say what is stuck on first, and no border can be worked out.',
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
          ? `${first} lies on itself`
          : `${names.join(' lies on ')} lies on ${first}: a circle that rests on nothing`,
      remedy: 'name another piece behind "on:", or take one "on:" out',
      notes: circle.slice(1).map(({ value, at }, index) => ({
        message: `${value} lies on ${names[index + 2] ?? first}`,
        at,
      })),
    };
  },
};
