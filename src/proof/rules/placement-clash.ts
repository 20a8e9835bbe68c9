import type { Length } from '../../measure/length.ts';
import { axesOf } from '../axis.ts';
import { sheetWith } from '../example.ts';
import type { ProofContext, Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

const placed = (at: string): string =>
  sheetWith({
    pieces: `card: { stock: cream, cut: 4 x 5 }\nstrip: { stock: cream, cut: 3 x 1, on: card, at: ${at} }`,
  });

export const placementClash: Rule<'placement-clash'> = {
  id: 'placement-clash',
  severity: 'error',
  summary: "Distances given from two opposite edges leave exactly the layer's own width between them.",
  why: 'A strip 3 in wide cannot lie 1/4 in from the left and 1/4 in from the right of a base 4 in wide. Give one of the two; the other follows.',
  fails: { sheet: placed('{ left: 1/4, right: 1/4 }'), blames: '1/4' },
  passes: { sheet: placed('{ left: 1/4 }') },
  check: ({ project, shapes, report }: ProofContext) => {
    const say = (length: Length): string => sayLength(length, project.unit);
    for (const { layer, sides, base, size, baseIs } of shapes.layers.flatMap(axesOf)) {
      const [near, far] = sides.map((side) => layer.piece.placement[side]);
      if (!near || !far) continue;
      const room = base.minus(near.value).minus(far.value);
      if (room.equals(size)) continue;
      report({
        message: `${layer.piece.id.value} is ${say(size)} ${baseIs}, but ${say(near.value)} from the ${sides[0]} and ${say(far.value)} from the ${sides[1]} of ${layer.baseName} leave ${room.sign > 0 ? say(room) : 'nothing'}`,
        remedy: `leave out "${sides[1]}:", which then is ${say(base.minus(near.value).minus(size))}`,
        at: far.at,
        notes: [{ message: `${say(near.value)} from the ${sides[0]}`, at: near.at }],
      });
    }
  },
};
