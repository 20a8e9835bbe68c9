import type { Length } from '../../measure/length.ts';
import type { At } from '../../project/source.ts';
import { type Axis, axesOf, type OfLayer, ofLayer } from '../axis.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OfLayer &
  Pick<Axis, 'size' | 'base' | 'baseIs' | 'sides'> & {
    /** The distances given from the two sides. */
    readonly near: At<Length>;
    readonly far: Length;
  };

export const placementClash: Rule<Facts> = {
  severity: 'error',
  summary: "Distances given from two opposite edges leave exactly the layer's own width between them.",
  why: 'A strip 3 in wide cannot be 1/4 in from both the left and the right of a base 4 in wide. Give one of the two; the other follows.',
  fails: {
    pieces:
      'card: { stock: cream, cut: 4 x 5 }\nstrip: { stock: cream, cut: 3 x 1, on: card, at: { left: 1/4, right: 1/4 } }',
    blames: '1/4',
  },
  passes: { with: '', insteadOf: ', right: 1/4' },
  *check({ project, shapes }) {
    for (const { layer, sides, base, size, baseIs } of shapes.layers.flatMap(axesOf)) {
      const { placement } = layer.piece;
      const [near, far] = [placement[sides[0]], placement[sides[1]]];
      if (!near || !far || base.minus(near.value).minus(far.value).equals(size)) continue;
      const given = { sides, near, far: far.value, size, base, baseIs };
      yield { at: far.at, facts: { ...ofLayer(project, layer), ...given } };
    }
  },
  say: ({ layer, baseName, sides, near, far, size, base, baseIs, unit }) => {
    const say = (length: Length): string => sayLength(length, unit);
    const [first, second] = sides;
    const room = base.minus(near.value).minus(far);
    const given = `${say(near.value)} from the ${first}`;
    return {
      message: `${layer} is ${say(size)} ${baseIs}, but ${given} and ${say(far)} from the ${second} of ${baseName} leave ${room.sign > 0 ? say(room) : 'nothing'}`,
      remedy: `leave out "${second}:"; it then works out to ${say(base.minus(near.value).minus(size))}`,
      notes: [{ message: given, at: near.at }],
    };
  },
};
