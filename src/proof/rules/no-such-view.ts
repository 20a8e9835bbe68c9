import type { Reference } from '../../project/model.ts';
import type { Shapes } from '../../shape/shapes.ts';
import { USUAL_VIEW, viewsOf } from '../../shape/view/views.ts';
import { sheetWith } from '../example.ts';
import { isNamed } from '../part-names.ts';
import { everyProse } from '../prose.ts';
import type { ProofContext, Rule, Statement } from '../rule.ts';
import { quote, sayList } from '../words.ts';

const card = (drawing: string): string =>
  sheetWith({
    pieces:
      'card: { stock: cream, cut: 8 x 5, score: [{ from: left, at: [4] }], panels: { front: B1 } }\nmat: { stock: cream, cut: 3 x 4, on: card.front }',
    body: `## Fold\nFold :piece[card] and stick :piece[mat] on it.\n\n::drawing{${drawing}}\n`,
  });

export const noSuchView: Rule<'no-such-view'> = {
  id: 'no-such-view',
  severity: 'error',
  summary: 'A drawing can be made of what a step asks for.',
  why: 'A piece without score lines cannot be shown folded, a card with one fold has no second stage. The step would have a gap where it promises a picture.',
  fails: { sheet: card('of=card view=fold-2'), blames: 'fold-2' },
  passes: { sheet: card('of=card view=fold-1') },
  ownEditionOnly: true,
  check: ({ project, shapes, report }: ProofContext) => {
    for (const reference of everyProse(project).flatMap(({ references }) => references)) {
      if (reference.kind !== 'drawing' || !isNamed(shapes, reference.name.value)) continue;
      const statement = statementOn(reference, shapes);
      if (statement) report(statement);
    }
  },
};

function statementOn({ name, view }: Reference, shapes: Shapes): Statement | undefined {
  const views = viewsOf(shapes, name.value);
  const asked = view?.value ?? USUAL_VIEW;
  if (views.includes(asked)) return undefined;
  const at = view?.at ?? name.at;
  const [piece = ''] = name.value.split('.');
  if (views.length > 0) {
    const message = `a drawing of ${name.value} has no view ${quote(asked)}`;
    return {
      message,
      remedy: `write ${sayList(
        views.map((each) => `view=${each}`),
        'or',
      )}`,
      at,
    };
  }
  const message = `nothing lies on ${name.value}, so there is nothing to draw`;
  return { message, remedy: `draw the whole piece: of=${piece}`, at: name.at };
}
