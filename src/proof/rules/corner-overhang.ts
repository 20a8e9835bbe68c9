import { Length } from '../../measure/length.ts';
import { nextMark, roundMillimetres } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import type { Project } from '../../project/model.ts';
import type { At } from '../../project/source.ts';
import { fillsItsBox, groundOf, reachPast } from '../../shape/ground.ts';
import type { Layer, Shapes } from '../../shape/shapes.ts';
import { type OfLayer, ofLayer } from '../axis.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OfLayer & {
  /** The radius of the layer's own corners, if they are rounded. */
  readonly own?: Length;
  readonly base: RoundBase | CutBase;
};

/** A flat piece by its radius, and the radius at which the layer follows it. */
type RoundBase = { readonly radius: At<Length>; readonly following: Length };

/** Any other base by its outline, which the layer passes so far at a corner, or with an outline of its own. */
type CutBase = { readonly by: Length; readonly isOutlined: boolean };

export const cornerOverhang: Rule<Facts> = {
  severity: 'error',
  summary:
    'The corners of a layer stay within those of its base, whether these are rounded, clipped or tapered.',
  why: 'A square layer that fits a base by its width and height can still stick out at its corners: past the rounded corners of a card, the clipped ones of a tag, the slanted sides of a tapered flap. Round the layer too, clip it the same way, or cut it smaller.',
  fails: {
    pieces:
      'card: { stock: cream, cut: 4 x 5, corners: 1/2 }\nfront: { stock: cream, cut: 3 7/8 x 4 7/8, on: card }',
    blames: 'front',
  },
  passes: { with: 'on: card, corners: 7/16', insteadOf: 'on: card' },
  *check({ project, shapes }) {
    for (const layer of shapes.layers) {
      const base = passedBase(layer, project, shapes);
      const own = layer.piece.corners;
      const facts = { ...ofLayer(project, layer), ...(own && { own: own.value }) };
      if (base) yield { at: own?.at ?? layer.piece.id.at, facts: { ...facts, base } };
    }
  },
  say: ({ layer, baseName, own, base, unit }) => {
    const corners = own ? `corners of ${sayLength(own, unit)}` : 'square corners';
    if ('by' in base && base.isOutlined) {
      return {
        message: `${layer} fits ${baseName} by its width and height, but passes its outline by ${sayLength(base.by, unit)}`,
        remedy: 'cut it smaller, move it further in, or write "overhang: yes" if it is meant so',
      };
    }
    if ('by' in base) {
      return {
        message: `${layer} fits ${baseName}, but its ${corners} pass the cut ones of the base by ${sayLength(base.by, unit)}`,
        remedy: 'cut it smaller, move it further in, or cut its corners like those of the base',
      };
    }
    const rounded = sayLength(base.radius.value, unit);
    return {
      message: `${layer} fits ${baseName}, but its ${corners} show beyond the rounded ones of the base (${rounded})`,
      remedy: `round its corners at ${sayLength(base.following, unit)}, or cut it smaller`,
      notes: [{ message: `${baseName} has corners of ${rounded}`, at: base.radius.at }],
    };
  },
};

/** Millimetres: straight stretches stand for arcs in outlines, and miss them by less. */
const ARC_MISS = 0.1;

/** The base whose corners a layer passes though it fits by width and height; undefined where it passes none. */
function passedBase(layer: Layer, { pieces, unit }: Project, shapes: Shapes): Facts['base'] | undefined {
  const { piece, reveals, turn } = layer;
  const reference = piece.on?.value;
  const { left, right, top, bottom } = reveals;
  const least = Length.min(left, right, top, bottom);
  if (piece.overhang || !reference || least.sign < 0) return undefined;
  const base = pieces.get(reference.piece);
  const isOutlined = [piece, base].some(
    (each) => each?.body.kind === 'flat' && (each.body.outline ?? each.body.drawn),
  );
  const isRounded = base?.body.kind === 'flat' && turn % 90 === 0 && !isOutlined;
  const radius = isRounded ? base.corners : undefined;
  if (radius) {
    const following = radius.value.minus(least);
    return passesCorner(layer, radius.value) ? { radius, following } : undefined;
  }
  const { panel } = layer.under;
  const isUncut = turn % 90 === 0 && panel !== undefined && fillsItsBox(panel);
  const by = isUncut ? 0 : reachPast(groundOf(layer, shapes));
  const mark = nextMark(roundMillimetres(by, 1000), rulerUnit(unit), 'finest');
  return by > ARC_MISS ? { by: mark, isOutlined } : undefined;
}

/**
 * Whether a corner of the layer lies outside the arc that rounds the base's corner there. An arc of the layer lies
 * inside when the distance of the two centres is at most the difference of the two radii. Exact, by whole numbers.
 */
function passesCorner({ piece, reveals }: Layer, radius: Length): boolean {
  const own = piece.corners?.value;
  const slack = own ? radius.minus(own) : radius;
  if (slack.sign <= 0) return false;
  return [reveals.left, reveals.right].some((across) =>
    [reveals.top, reveals.bottom].some((upright) => {
      const [x, y] = [slack.minus(across), slack.minus(upright)];
      if (x.sign <= 0 || y.sign <= 0) return false;
      const [a, b] = [x.over(slack), y.over(slack)];
      const bottom = a.denominator * b.denominator;
      return (a.numerator * b.denominator) ** 2n + (b.numerator * a.denominator) ** 2n > bottom ** 2n;
    }),
  );
}
