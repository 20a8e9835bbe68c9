import type { At } from '../../project/source.ts';
import { type Link, linkCircles } from '../../shape/links.ts';
import type { Rule } from '../rule.ts';

type Facts = {
  /** Each piece of the circle, at the words that say what it takes: the next, and the last the first. */
  readonly circle: readonly (At<string> & { readonly way: Link['way'] })[];
};

export const circularLink: Rule<Facts> = {
  severity: 'error',
  summary: 'No piece goes into itself, neither directly nor by way of others.',
  why: 'An envelope that holds a card cannot lie in that card. One of the two was meant the other way around.',
  fails: {
    stock: 'cream: { name: Cream cardstock, sheet: 8 1/2 x 11 }',
    pieces:
      'card: { stock: cream, form: single-fold card, size: 5 1/2 x 4 1/4, holds: envelope }\nenvelope: { stock: cream, form: envelope, card: 5 1/2 x 4 1/4, holds: card }',
    blames: 'envelope',
  },
  passes: { with: '4 1/4 }', insteadOf: '4 1/4, holds: envelope }' },
  *check({ project }) {
    for (const circle of linkCircles(project.pieces)) {
      const told = circle.map(({ piece: { id }, way, at }) => ({ value: id.value, at, way }));
      const [first] = told;
      if (first) yield { at: first.at, facts: { circle: told } };
    }
  },
  say: ({ circle }) => {
    const names = circle.map(({ value }) => value);
    const [first = ''] = names;
    const said = circle.map(({ value, way }, index) => {
      const does = way === 'holds' ? 'holds' : 'goes around';
      return `${value} ${does} ${circle.length === 1 ? 'itself' : (names[index + 1] ?? first)}`;
    });
    return {
      message: said.join(', and '),
      remedy: 'name another piece there, or take one of the two out',
      notes: circle.slice(1).map(({ at }, index) => ({ message: said[index + 1] ?? '', at })),
    };
  },
};
