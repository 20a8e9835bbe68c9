import { Length } from '../../measure/length.ts';
import type { Edge, Project } from '../../project/model.ts';
import { type Axis, axesOf, baseNote, sizePlace } from '../axis.ts';
import { sheetWith } from '../example.ts';
import type { ProofContext, Rule, Statement } from '../rule.ts';
import { sayLength } from '../words.ts';

export const layerOverhang: Rule<'layer-overhang'> = {
  id: 'layer-overhang',
  severity: 'error',
  summary: 'A layer does not pass the edge of what it is stuck on.',
  why: 'A layer cut too large, or placed too near an edge, sticks out beyond its base. Everyone who cuts by the sheet finds out when the paper is already cut. A layer that is meant to stick out says `overhang: yes`.',
  fails: {
    sheet: sheetWith({
      pieces: 'card: { stock: cream, cut: 3 1/2 x 5 }\nfront: { stock: cream, cut: 3 3/4 x 4 3/4, on: card }',
    }),
    blames: '3 3/4',
  },
  passes: {
    sheet: sheetWith({
      pieces: 'card: { stock: cream, cut: 3 1/2 x 5 }\nfront: { stock: cream, cut: 3 1/4 x 4 3/4, on: card }',
    }),
  },
  check: ({ project, shapes, report }: ProofContext) => {
    const layers = shapes.layers.filter(({ piece }) => !piece.overhang);
    for (const axis of layers.flatMap(axesOf)) {
      if (axis.size.greaterThan(axis.base)) report(tooLarge(axis, project));
      else
        for (const side of axis.sides) if (revealAt(axis, side).sign < 0) report(tooFar(axis, side, project));
    }
  },
};

function tooLarge(axis: Axis, project: Project): Statement {
  const { layer, size, base, layerIs, baseIs } = axis;
  const say = (length: Length): string => sayLength(length, project.unit);
  const reveal = usualReveal(project);
  const turned = layerIs === baseIs ? '' : ` and lies turned, which is`;
  const excess = `${say(size.minus(base))} more than ${layer.baseName} (${say(base)}${turned && ` ${baseIs}`})`;
  const room = base.minus(reveal.times(2));
  return {
    message: `${layer.piece.id.value} is ${say(size)} ${layerIs}${turned || ','} ${excess}`,
    remedy:
      room.sign > 0 ? `cut it at ${say(room)} for a ${say(reveal)} reveal` : `cut it at ${say(base)} at most`,
    at: sizePlace(axis),
    notes: baseNote(project, axis),
  };
}

function tooFar(axis: Axis, past: Edge, project: Project): Statement {
  const { layer, size, base, baseIs } = axis;
  const say = (length: Length): string => sayLength(length, project.unit);
  const from = axis.sides.find((side) => layer.piece.placement[side]) ?? past;
  const given = layer.piece.placement[from];
  const distance = given
    ? `${say(given.value)} from the ${from} of ${layer.baseName}`
    : `on ${layer.baseName}`;
  const room = base.minus(size);
  return {
    message: `${layer.piece.id.value} lies ${distance} and passes its ${past} edge by ${say(revealAt(axis, past).abs())}: it is ${say(size)} ${baseIs} on ${say(base)}`,
    remedy: `put it at most ${say(room)} from the ${from}`,
    at: given?.at ?? sizePlace(axis),
    notes: baseNote(project, axis),
  };
}

function revealAt({ sides, reveals }: Axis, side: Edge): Length {
  return side === sides[0] ? reveals[0] : reveals[1];
}

/** Common practice, no source: a border of an eighth of an inch, or of three millimetres. */
function usualReveal(project: Project): Length {
  return project.unit === 'in' ? Length.of(1, 8, 'in') : Length.of(3, 1, 'mm');
}
