import { writeName } from '../../project/ref.ts';
import type { Layer } from '../../shape/shapes.ts';
import { eachOnBase, type OfLayer } from '../axis.ts';
import type { Rule } from '../rule.ts';

type Facts = OfLayer & {
  /** What was named, as written, and what is wrong with it. */
  readonly named: string;
  readonly wrong: 'inside of a flat piece' | 'behind a folded piece' | 'on an opening';
};

export const noSuchSide: Rule<Facts> = {
  severity: 'error',
  summary: 'A piece is stuck inside something that is folded, and behind something flat.',
  why: 'A folded piece has an outside and an inside, each with its panels. A flat piece has a front and a back, and what is stuck to its back is behind it. With the wrong word nobody can say which side of the paper takes the glue.',
  fails: {
    pieces: 'frame: { stock: cream, cut: 4 x 5 }\nphoto: { stock: cream, cut: 3 x 4, on: inside frame }',
    blames: 'inside frame',
  },
  passes: { with: 'behind: frame', insteadOf: 'on: inside frame' },
  ownEditionOnly: true,
  check: (context) => eachOnBase(context, wrongSide),
  say: ({ layer, named, wrong }) =>
    wrong === 'inside of a flat piece'
      ? {
          message: `${layer} lies inside ${named}, which is flat and has no inside`,
          remedy: `write "behind: ${named}" to stick it to the back`,
        }
      : wrong === 'on an opening'
        ? {
            message: `${layer} lies on ${named}, which is an opening: there is no paper`,
            remedy: `write "behind: ${named}" for what is to show through it`,
          }
        : {
            message: `${layer} lies behind ${named}, which is folded`,
            remedy: `write "on: inside ${named}" to stick it to the inside`,
          },
};

function wrongSide({ on, under: { net, opening } }: Layer): Omit<Facts, keyof OfLayer> | undefined {
  if (opening) return on.face === 'outside' ? { named: writeName(on), wrong: 'on an opening' } : undefined;
  if (on.face === 'outside') return undefined;
  const isFlat = net.folds.length === 0;
  if (isFlat === (on.face === 'behind')) return undefined;
  return { named: writeName(on), wrong: isFlat ? 'inside of a flat piece' : 'behind a folded piece' };
}
