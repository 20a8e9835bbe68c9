import { Length } from '../../measure/length.ts';
import type { At } from '../../project/source.ts';
import type { Layer } from '../../shape/shapes.ts';
import { type OfLayer, ofLayer } from '../axis.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OfLayer & {
  /** The radius of the layer's own corners, if they are rounded. */
  readonly own?: Length;
  /** That of the base's. */
  readonly radius: At<Length>;
  /** The one at which the layer follows its base. */
  readonly following: Length;
};

export const cornerOverhang: Rule<Facts> = {
  severity: 'error',
  summary: 'The corners of a layer stay within the rounded corners of its base.',
  why: "A square layer that fits a base by its width and height can still show its corners beyond the base's rounded ones. Round the layer too, or cut it smaller.",
  fails: {
    pieces:
      'card: { stock: cream, cut: 4 x 5, corners: 1/2 }\nfront: { stock: cream, cut: 3 7/8 x 4 7/8, on: card }',
    blames: 'front',
  },
  passes: { with: 'on: card, corners: 7/16', insteadOf: 'on: card' },
  *check({ project, shapes }) {
    for (const layer of shapes.layers) {
      const { piece } = layer;
      const reference = piece.on?.value;
      const base = reference && reference.panel === undefined && project.pieces.get(reference.piece);
      const radius = base ? base.corners : undefined;
      if (piece.overhang || !radius || !passesCorner(layer, radius.value)) continue;
      const own = piece.corners;
      const { left, right, top, bottom } = layer.reveals;
      const following = radius.value.minus(Length.min(left, right, top, bottom));
      const facts = { ...ofLayer(project, layer), radius, following, ...(own && { own: own.value }) };
      yield { at: own?.at ?? piece.id.at, facts };
    }
  },
  say: ({ layer, baseName, own, radius, following, unit }) => {
    const corners = own ? `corners of ${sayLength(own, unit)}` : 'square corners';
    const rounded = sayLength(radius.value, unit);
    return {
      message: `${layer} fits ${baseName}, but its ${corners} show beyond the rounded ones of the base (${rounded})`,
      remedy: `round its corners at ${sayLength(following, unit)}, or cut it smaller`,
      notes: [{ message: `${baseName} has corners of ${rounded}`, at: radius.at }],
    };
  },
};

/**
 * Whether a corner of the layer lies outside the arc that rounds the base's corner there. An arc of the layer lies
 * inside when the distance of the two centres is at most the difference of the two radii. Exact, by whole numbers.
 */
function passesCorner({ piece, reveals, turn }: Layer, radius: Length): boolean {
  if (turn % 90 !== 0) return false;
  const own = piece.corners?.value;
  const slack = own ? radius.minus(own) : radius;
  if (slack.sign <= 0) return false;
  return [reveals.left, reveals.right].some((across) =>
    [reveals.top, reveals.bottom].some((upright) => {
      const [x, y] = [slack.minus(across), slack.minus(upright)];
      if (x.sign <= 0 || y.sign <= 0 || across.sign < 0 || upright.sign < 0) return false;
      const [a, b] = [x.over(slack), y.over(slack)];
      const bottom = a.denominator * b.denominator;
      return (a.numerator * b.denominator) ** 2n + (b.numerator * a.denominator) ** 2n > bottom ** 2n;
    }),
  );
}
