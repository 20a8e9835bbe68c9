import { roundDecimals } from '../../measure/round.ts';
import { uncovered } from '../../shape/common-parts.ts';
import { areaOf } from '../../shape/flat-polygon.ts';
import { partOver } from '../../shape/ground.ts';
import { imageOutline, imagesIn, layersOver, type OnPaper } from '../decoration.ts';
import type { Rule } from '../rule.ts';
import { sayList } from '../words.ts';

type Facts = Omit<OnPaper, 'unit'> & {
  readonly stamp: string;
  /** The layers that lie over it, and how much of it they hide, in percent. */
  readonly layers: readonly string[];
  readonly hidden: number;
};

export const impressionCovered: Rule<Facts> = {
  severity: 'warning',
  summary: 'No layer covers a stamped image, unless the image says that one should.',
  why: 'What is stamped is stamped before the layers go on, and what they cover is lost. If you want that, as for a background under a panel, write `covered: yes`.',
  fails: {
    pieces:
      'mat: { stock: cream, cut: 3 x 4, impressions: { stamp: leaf, size: 2 x 1 } }\nlabel: { stock: cream, cut: 2 x 1, on: mat, at: { top: 2 } }',
    head: 'supplies: [{ item: Leaf stamp, kind: stamp }]',
    blames: 'leaf',
  },
  passes: { with: 'at: { top: 2 1/2 }', insteadOf: 'at: { top: 2 }' },
  ownEditionOnly: true,
  *check(context) {
    for (const { it, net, facts } of imagesIn(context)) {
      const outline = imageOutline(it);
      const over = layersOver(net, context).filter(([, cover]) => partOver(outline, cover));
      if (it.written.covered || over.length === 0) continue;
      const seen = uncovered(
        outline,
        over.map(([, cover]) => cover),
        0,
      );
      const left = seen.reduce((sum, part) => sum + areaOf(part), 0);
      const hidden = roundDecimals(100 * (1 - left / areaOf(outline)), 0);
      const layers = over.map(([layer]) => layer.piece.id.value);
      yield { at: it.written.stamp.at, facts: { on: facts.on, stamp: it.stamp, layers, hidden } };
    }
  },
  say: ({ on, stamp, layers, hidden }) => ({
    message: `${sayList(layers)} ${layers.length > 1 ? 'hide' : 'hides'} ${hidden} % of the ${stamp} on ${on}`,
    remedy: 'move one of them, or write "covered: yes" if a layer is meant to lie on it',
  }),
};
