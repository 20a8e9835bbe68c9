import { Length, type Unit } from '../../measure/length.ts';
import type { Edge } from '../../project/net-as-written.ts';
import type { Layer } from '../../shape/shapes.ts';
import { ownNet } from '../../shape/sheets.ts';
import { type Axis, type AxisFacts, axesOf, axisFacts, noteBase, sizePlace } from '../axis.ts';
import { coveredBy } from '../covered.ts';
import type { Evidence, ProofContext, Rule } from '../rule.ts';
import type { Words } from '../told.ts';
import { sayLength } from '../words.ts';

type Facts = AxisFacts & {
  /** By its nature it is as wide as it is high. */
  readonly isRound?: true;
  /** Where it lies, if it is not too large as a whole. */
  readonly lies?: {
    /** The edge it is placed from, and how far if a distance is given. */
    readonly from: Edge;
    readonly distance?: Length;
    /** The edge it passes, and by how much. */
    readonly past: Edge;
    readonly by: Length;
  };
};

export const layerOverhang: Rule<Facts> = {
  severity: 'error',
  summary: 'A layer does not pass the edge of what it is stuck on.',
  why: 'A layer cut too large, or placed too near an edge, sticks out beyond its base. Everyone finds out when the paper is already cut. A layer that is meant to stick out says `overhang: yes`.',
  fails: {
    pieces: 'card: { stock: cream, cut: 3 1/2 x 5 }\nfront: { stock: cream, cut: 3 3/4 x 4 3/4, on: card }',
    blames: '3 3/4',
  },
  passes: { with: '3 1/4', insteadOf: '3 3/4' },
  *check(context) {
    for (const layer of context.shapes.layers.filter(({ piece }) => !piece.overhang)) {
      const found = overhangsOf(layer, context);
      // Of one that is stuck on a joint that says enough.
      if (found.length > 0 && !coveredBy(layer, context)?.gluedTo) yield* found;
    }
  },
  say: (facts) => ({
    ...(facts.lies ? sayTooFar(facts, facts.lies) : sayTooLarge(facts)),
    notes: noteBase(facts),
  }),
};

/** Where a layer passes its base; a circle that is too large is so both ways, and is told once. */
function overhangsOf(layer: Layer, { project, shapes }: ProofContext): readonly Evidence<Facts>[] {
  const found = axesOf(layer).flatMap((axis) => overhangs(axis, axisFacts(project, axis)));
  const isRound = ownNet(shapes.nets, layer.piece.id.value)?.shape?.across;
  const tooLarge = found.filter(({ facts }) => !facts.lies);
  if (!isRound || tooLarge.length === 0) return found;
  const [smallest] = tooLarge.toSorted((one, other) => one.facts.base.compare(other.facts.base));
  return smallest ? [{ ...smallest, facts: { ...smallest.facts, isRound } }] : [];
}

function overhangs(axis: Axis, facts: AxisFacts): readonly Evidence<Facts>[] {
  if (axis.size.greaterThan(axis.base)) return [{ at: sizePlace(axis), facts }];
  const passed = axis.sides.filter((side) => axis.layer.reveals[side].sign < 0);
  return passed.map((side) => tooFar(axis, side, facts));
}

function tooFar(axis: Axis, past: Edge, facts: AxisFacts): Evidence<Facts> {
  const { piece, reveals } = axis.layer;
  const from = axis.sides.find((side) => piece.placement[side]) ?? past;
  const given = piece.placement[from];
  const lies = { from, past, by: reveals[past].abs(), ...(given && { distance: given.value }) };
  return { at: given?.at ?? sizePlace(axis), facts: { ...facts, lies } };
}

function sayTooLarge({ layer, size, base, layerIs, baseIs, baseName, isRound, unit }: Facts): Words {
  const say = (length: Length): string => sayLength(length, unit);
  const reveal = usualReveal(unit);
  const turned = layerIs === baseIs ? '' : ` and lies turned, which is`;
  const excess = `${say(size.minus(base))} more than ${baseName} (${say(base)}${turned && ` ${baseIs}`})`;
  const room = base.minus(reveal.times(2));
  const both = isRound ? ' both ways' : '';
  return {
    message: `${layer} is ${say(size)} ${layerIs}${turned || ','} ${excess}`,
    remedy:
      room.sign > 0
        ? `cut it at ${say(room)}${both} for a ${say(reveal)} reveal`
        : `cut it at ${say(base)}${both} at most`,
  };
}

function sayTooFar(
  { layer, size, base, baseIs, baseName, unit }: AxisFacts,
  { from, distance, past, by }: NonNullable<Facts['lies']>,
): Words {
  const say = (length: Length): string => sayLength(length, unit);
  if (distance && distance.sign < 0)
    return {
      message: `${layer} reaches ${say(by)} past the ${past} edge of ${baseName}`,
      remedy: 'leave out the minus sign, or write "overhang: yes" if it is meant to stick out',
    };
  const where = distance ? `${say(distance)} from the ${from} of ${baseName}` : `on ${baseName}`;
  return {
    message: `${layer} lies ${where} and passes its ${past} edge by ${say(by)}: it is ${say(size)} ${baseIs} on ${say(base)}`,
    remedy: `put it at most ${say(base.minus(size))} from the ${from}`,
  };
}

/** Common practice, no source: a border of an eighth of an inch, or of three millimeters. */
function usualReveal(unit: Unit): Length {
  return unit === 'in' ? Length.of(1, 8, 'in') : Length.of(3, 1, 'mm');
}
