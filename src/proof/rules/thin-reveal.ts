import { Length, type Unit } from '../../measure/length.ts';
import { type Axis, axesOf, baseNote, sizePlace } from '../axis.ts';
import { sheetWith } from '../example.ts';
import type { ProofContext, Rule } from '../rule.ts';
import { sayLength, sayList } from '../words.ts';

export const thinReveal: Rule<'thin-reveal'> = {
  id: 'thin-reveal',
  severity: 'warning',
  summary: 'A border that shows round a layer is at least 1/16 in (1.5 mm) wide.',
  why: 'Nobody sticks a layer down so exactly that a border of a thirty-second of an inch looks even; it shows on one side and vanishes on the other. A layer that ends flush with its base is fine, and so is a border one can see.',
  fails: {
    sheet: sheetWith({
      pieces:
        'card: { stock: cream, cut: 4 1/4 x 5 1/2 }\nmat: { stock: cream, cut: 4 3/16 x 5 1/4, on: card }',
    }),
    blames: '4 3/16',
  },
  passes: {
    sheet: sheetWith({
      pieces: 'card: { stock: cream, cut: 4 1/4 x 5 1/2 }\nmat: { stock: cream, cut: 4 x 5 1/4, on: card }',
    }),
  },
  check: ({ project, shapes, report }: ProofContext) => {
    const least = leastReveal(project.unit);
    const say = (length: Length): string => sayLength(length, project.unit);
    for (const axis of shapes.layers.flatMap(axesOf)) {
      const thin = axis.sides.filter((_, index) => isThin(axis.reveals[index], least));
      const [side] = thin;
      if (side === undefined) continue;
      const { layer, reveals, sides } = axis;
      const shows = say(side === sides[0] ? reveals[0] : reveals[1]);
      const given = layer.piece.placement[side];
      report({
        message: `${layer.piece.id.value} leaves ${shows} of ${layer.baseName} to show at the ${sayList(thin)}, too thin to look even`,
        remedy: given ? `put it ${say(least)} or more from the ${side}` : cutRemedy(axis, least, say),
        at: given?.at ?? sizePlace(axis),
        notes: baseNote(project, axis),
      });
    }
  },
};

function cutRemedy({ base, layerIs }: Axis, least: Length, say: (length: Length) => string): string {
  const narrower = base.minus(least.times(2));
  return `cut it ${say(narrower)} ${layerIs} for a ${say(least)} reveal, or the full ${say(base)}`;
}

function isThin(reveal: Length | undefined, least: Length): boolean {
  return reveal !== undefined && reveal.sign > 0 && reveal.lessThan(least);
}

/** Common practice, no source: what the eye still takes for a border. */
function leastReveal(unit: Unit): Length {
  return unit === 'in' ? Length.of(1, 16, 'in') : Length.of(3, 2, 'mm');
}
