import type { Layer } from '../../shape/shapes.ts';
import { eachOnBase, type OfLayer } from '../axis.ts';
import type { ProofContext, Rule } from '../rule.ts';

type Facts = OfLayer & {
  /** The piece it lies on, of which there may be several too. */
  readonly base: string;
  readonly count: number;
  readonly bases: number;
};

export const layerCount: Rule<Facts> = {
  severity: 'note',
  summary: 'There are no more of a layer than of its base.',
  why: 'A `count:` says how many each attendee cuts. Three of one layer on one card would all be in the one place that is written: the drawings show one, and nobody knows where the others go.',
  fails: {
    pieces: 'card: { stock: cream, cut: 4 x 5 }\ndot: { stock: cream, cut: 1 x 1, on: card, count: 3 }',
    blames: 'card',
  },
  passes: { with: 'on: card }', insteadOf: 'on: card, count: 3 }' },
  check: (context) => eachOnBase(context, (layer) => surplusOf(layer, context)),
  say: ({ layer, base, count, bases }) =>
    count % bases === 0
      ? {
          message: `${count / bases} × ${layer} lie in one place on each ${base}`,
          remedy: `give each a line of its own with its place under "at:", or "count: ${bases}"`,
        }
      : {
          message: `there are ${count} × ${layer}, but only ${bases} × ${base}, which they lie on`,
          remedy: `make the "count:" of both the same`,
          severity: 'warning',
        },
};

function surplusOf({ piece, on }: Layer, { project }: ProofContext): Omit<Facts, keyof OfLayer> | undefined {
  const [count, bases] = [piece.count.value, project.pieces.get(on.piece)?.count.value ?? 1];
  return count > bases ? { base: on.piece, count, bases } : undefined;
}
