import { everyProse } from '../../project/prose/prose.ts';
import { writeRef } from '../../project/ref.ts';
import { USUAL_VIEW, viewsOf } from '../../shape/view/views.ts';
import { isThere } from '../part-names.ts';
import type { Rule } from '../rule.ts';
import { quote, sayList } from '../words.ts';

type Facts = {
  readonly of: string;
  readonly piece: string;
  readonly asked: string;
  /** The views there are; none where nothing lies on what is named. */
  readonly views: readonly string[];
};

export const noSuchView: Rule<Facts> = {
  severity: 'error',
  summary: 'A drawing can be made of what a step asks for.',
  why: 'A piece without score lines cannot be shown folded, and a card with one fold has no second stage. The step would have a gap where it promises a picture.',
  fails: {
    pieces:
      'card: { stock: cream, cut: 8 x 5, score: [{ from: left, at: [4] }], panels: { front: B1 } }\nmat: { stock: cream, cut: 3 x 4, on: card.front }',
    body: '## Fold\nFold :piece[card] and stick :piece[mat] on it.\n\n::drawing{of=card view=fold-2}\n',
    blames: 'fold-2',
  },
  passes: { with: 'fold-1', insteadOf: 'fold-2' },
  ownEditionOnly: true,
  *check({ project, shapes }) {
    for (const { kind, of, view } of everyProse(project).flatMap(({ references }) => references)) {
      if (kind !== 'drawing' || !isThere(shapes, of.value)) continue;
      const views = viewsOf(shapes, of.value);
      const asked = view?.value ?? USUAL_VIEW;
      if (views.includes(asked)) continue;
      const at = views.length > 0 ? (view?.at ?? of.at) : of.at;
      yield { at, facts: { of: writeRef(of.value), piece: of.value.piece, asked, views } };
    }
  },
  say: ({ of, piece, asked, views }) =>
    views.length > 0
      ? {
          message: `a drawing of ${of} has no view ${quote(asked)}`,
          remedy: `write ${sayList(
            views.map((each) => `view=${each}`),
            'or',
          )}`,
        }
      : {
          message: `nothing lies on ${of}, so there is nothing to draw`,
          remedy: `draw the whole piece: of=${piece}`,
        },
};
