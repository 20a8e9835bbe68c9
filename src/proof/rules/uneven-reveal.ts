import { Length, type Unit } from '../../measure/length.ts';
import type { Size } from '../../measure/size.ts';
import type { Edge } from '../../project/net-as-written.ts';
import type { Layer } from '../../shape/shapes.ts';
import { type Axis, axesOf, type OfLayer, ofLayer, sizePlace } from '../axis.ts';
import type { Evidence, Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = (Differing | OffCenter) & OfLayer;

/** The border at the sides is not that above and below. */
type Differing = {
  readonly sides: Length;
  readonly ends: Length;
  /** What to cut the layer at, in the direction it is too small, to have the narrower border all round. */
  readonly cut: Length;
  readonly layerIs: Axis['layerIs'];
};

/** Placed from one side, the layer leaves a little more at one of the two than at the other. */
type OffCenter = Pick<Axis, 'sides' | 'reveals'> & { readonly from: Edge };

export const unevenReveal: Rule<Facts> = {
  severity: 'warning',
  summary:
    'The border around a centered layer is the same on all sides, unless it is clearly meant to differ.',
  why: 'A border of 1/8 in at the sides and 3/16 in above and below is rarely meant: usually a number was subtracted wrongly. The eye sees the difference at once. Borders that differ by more than 1/8 in (on a strip, at least three times as long as it is wide, by more than 1/16 in), or are wider than 1/2 in, are assumed to be intended. A layer placed by distances that is almost centered, but not quite, gets a note.',
  fails: {
    pieces: 'card: { stock: cream, cut: 4 1/4 x 5 1/2 }\nmat: { stock: cream, cut: 4 x 5 1/8, on: card }',
    blames: '5 1/8',
  },
  passes: { with: '5 1/4, on', insteadOf: '5 1/8, on' },
  *check({ project, shapes }) {
    for (const layer of shapes.layers.filter(({ under }) => !under.opening)) {
      const { unit } = project;
      for (const found of [differing(layer, unit), ...axesOf(layer).map((axis) => offCenter(axis, unit))]) {
        if (found) yield { at: found.at, facts: { ...ofLayer(project, layer), ...found.facts } };
      }
    }
  },
  say: (facts) => {
    const { layer, baseName, unit } = facts;
    const say = (length: Length): string => sayLength(length, unit);
    if ('ends' in facts) {
      const { sides, ends, cut, layerIs } = facts;
      return {
        message: `${layer} leaves ${say(sides)} of ${baseName} to show at the sides, but ${say(ends)} above and below`,
        remedy: `cut it ${say(cut)} ${layerIs} for ${say(Length.min(sides, ends))} all round`,
      };
    }
    const { sides, reveals, from } = facts;
    return {
      severity: 'note',
      message: `${layer} lies ${say(reveals[0])} from the ${sides[0]} of ${baseName} and ${say(reveals[1])} from the ${sides[1]}: almost centered, but not quite`,
      remedy: `leave out "${from}" to center it, or leave it if you meant it`,
    };
  },
};

/** A centered layer whose border at the sides is a little different from that above and below. */
function differing(layer: Layer, unit: Unit): Evidence<Differing> | undefined {
  const { body } = layer.piece;
  // On a base with an outline, or with one of its own, its border is looked at elsewhere.
  if (layer.under.net.shape || (body.kind === 'flat' && body.outline)) return undefined;
  const [across, upright] = axesOf(layer);
  if (!across?.centered || !upright?.centered) return undefined;
  const [sides, ends] = [across.reveals[0], upright.reveals[0]];
  const { widest, slip } = tolerances(unit, isStrip(layer.size));
  const border = sides.sign > 0 && ends.sign > 0 && !Length.max(sides, ends).greaterThan(widest);
  if (!border || sides.equals(ends) || sides.minus(ends).abs().greaterThan(slip)) return undefined;
  const wider = sides.greaterThan(ends) ? across : upright;
  const cut = wider.base.minus(Length.min(sides, ends).times(2));
  return { at: sizePlace(wider), facts: { sides, ends, cut, layerIs: wider.layerIs } };
}

/** A layer placed by a distance that all but centers it. */
function offCenter({ layer, reveals, sides }: Axis, unit: Unit): Evidence<OffCenter> | undefined {
  const apart = reveals[0].minus(reveals[1]).abs();
  const from = sides.find((side) => layer.piece.placement[side]);
  const given = from && layer.piece.placement[from];
  if (!given || apart.sign === 0 || !apart.lessThan(tolerances(unit).slip)) return undefined;
  return { at: given.at, facts: { sides, reveals, from } };
}

/**
 * Our judgment, no source: the widest border that is looked at as one, and the largest difference that is a slip. A
 * strip's long borders are often meant to be other than those at its ends.
 */
function tolerances(unit: Unit, strip = false): { widest: Length; slip: Length } {
  const [widest, slip] =
    unit === 'in'
      ? [Length.of(1, 2, 'in'), Length.of(1, 8, 'in')]
      : [Length.of(12, 1, 'mm'), Length.of(3, 1, 'mm')];
  return { widest, slip: strip ? slip.half() : slip };
}

/** At least three times as long as it is wide. Our judgment, no source. */
function isStrip({ width, height }: Size): boolean {
  return !Length.max(width, height).lessThan(Length.min(width, height).times(3));
}
