import { Length, type Unit } from '../../measure/length.ts';
import { nextMark } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import type { Edge } from '../../project/net-as-written.ts';
import { type AxisFacts, axesOf, axisFacts, noteBase, type OfLayer, ofLayer, sizePlace } from '../axis.ts';
import type { Rule } from '../rule.ts';
import type { Words } from '../told.ts';
import { sayLength, sayList } from '../words.ts';

type Facts = ThinSides | (OfLayer & { readonly nearest: Length });

type ThinSides = AxisFacts & {
  /** What shows, and the sides at which it does. */
  readonly reveal: Length;
  readonly sides: readonly Edge[];
  /** The first of them that the layer is placed from. */
  readonly from?: Edge;
};

export const thinReveal: Rule<Facts> = {
  severity: 'warning',
  summary: 'A border that shows around a layer is at least 1/16 in (1.5 mm) wide.',
  why: 'Nobody sticks a layer down exactly enough for a border of a thirty-second of an inch to look even; it shows on one side and vanishes on the other. A layer flush with its base is fine, and so is a border you can see.',
  fails: {
    pieces:
      'card: { stock: cream, cut: 4 1/4 x 5 1/2 }\nmat: { stock: cream, cut: 4 3/16 x 5 1/4, on: card }',
    blames: '4 3/16',
  },
  passes: { with: '4 x', insteadOf: '4 3/16 x' },
  *check({ project, shapes }) {
    const least = leastReveal(project.unit);
    for (const layer of shapes.layers) {
      const nearest = layer.border?.least;
      if (!nearest || nearest.sign <= 0 || !nearest.lessThan(least)) continue;
      yield { at: layer.piece.on?.at ?? layer.piece.at, facts: { ...ofLayer(project, layer), nearest } };
    }
    const straight = shapes.layers.filter(({ under, border }) => !under.opening && !border);
    for (const axis of straight.flatMap(axesOf)) {
      const { reveals, piece } = axis.layer;
      const sides = axis.sides.filter((side) => reveals[side].sign > 0 && reveals[side].lessThan(least));
      const [side] = sides;
      if (side === undefined) continue;
      const given = piece.placement[side];
      const facts = {
        ...axisFacts(project, axis),
        reveal: reveals[side],
        sides,
        ...(given && { from: side }),
      };
      yield { at: given?.at ?? sizePlace(axis), facts };
    }
  },
  say: (facts) => {
    if ('nearest' in facts) return sayNearest(facts);
    const { layer, baseName, base, layerIs, reveal, sides, from, unit } = facts;
    const say = (length: Length): string => sayLength(length, unit);
    const least = leastReveal(unit);
    const narrower = base.minus(least.times(2));
    return {
      message: `${layer} leaves ${say(reveal)} of ${baseName} to show at the ${sayList(sides)}, too thin to look even`,
      remedy: from
        ? `put it ${say(least)} or more from the ${from}`
        : `cut it ${say(narrower)} ${layerIs} for a ${say(least)} reveal, or the full ${say(base)}`,
      notes: noteBase(facts),
    };
  },
};

/** Common practice, no source: what the eye still takes for a border. */
function leastReveal(unit: Unit): Length {
  return unit === 'in' ? Length.of(1, 16, 'in') : Length.of(3, 2, 'mm');
}

function sayNearest({ layer, baseName, nearest, unit }: OfLayer & { readonly nearest: Length }): Words {
  const [shown, least] = [nextMark(nearest, rulerUnit(unit), 'finest'), leastReveal(unit)];
  return {
    message: `${layer} leaves no more than ${sayLength(shown, unit)} of ${baseName} to show where their outlines are nearest, too thin to look even`,
    remedy: `cut it smaller, or to the outline of ${baseName}, for a ${sayLength(least, unit)} reveal`,
  };
}
