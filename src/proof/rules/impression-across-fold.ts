import { partingOf } from '../../shape/ground.ts';
import { imageOutline, imagesIn } from '../decoration.ts';
import type { Rule } from '../rule.ts';
import { sayPanels } from '../words.ts';

type Facts = {
  readonly piece: string;
  readonly stamp: string;
  readonly panels: readonly string[];
};

export const impressionAcrossFold: Rule<Facts> = {
  severity: 'warning',
  summary: 'A stamped image is on one panel of a folded piece.',
  why: 'On a score line a stamp prints with a gap, and the ink cracks when the paper is folded. And the whole image cannot be seen from any side.',
  fails: {
    pieces:
      'card: { stock: cream, form: single-fold card, size: 4 x 5, impressions: { stamp: leaf, size: 2 x 1 } }',
    head: 'supplies: [{ item: Leaf stamp, kind: stamp }]',
    blames: 'leaf',
  },
  passes: { with: 'size: 2 x 1, in: front', insteadOf: 'size: 2 x 1' },
  ownEditionOnly: true,
  *check(context) {
    for (const { it, net, facts } of imagesIn(context)) {
      const parting = it.panel ? undefined : partingOf({ net, outline: imageOutline(it) });
      if (!parting) continue;
      const panels = parting.parts.map(({ panel }) => panel.name ?? panel.id);
      yield { at: it.written.stamp.at, facts: { piece: facts.on, stamp: it.stamp, panels } };
    }
  },
  say: ({ piece, stamp, panels }) => ({
    message: `the ${stamp} lies across the fold between ${sayPanels(piece, panels)}`,
    remedy: `say which panel it is on: "in: ${panels.at(-1)}"`,
  }),
};
