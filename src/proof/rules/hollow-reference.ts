import type { Reference } from '../../project/model.ts';
import { type Shapes, sheetsOf } from '../../shape/shapes.ts';
import { sheetWith } from '../example.ts';
import { everyProse } from '../prose.ts';
import type { ProofContext, Rule } from '../rule.ts';

const layered = (named: string): string =>
  sheetWith({
    pieces: 'card: { stock: cream, cut: 4 x 5 }\nfront: { stock: cream, cut: 3 x 4, on: card }',
    body: `## Layer\nStick :piece[front] on :piece[card], leaving :reveal[${named}] all round.\n`,
  });

export const hollowReference: Rule = {
  id: 'hollow-reference',
  severity: 'error',
  summary: 'What a step asks the sheet to say of a piece, there is to be said.',
  why: 'A piece that lies on nothing has no reveal, one without score lines has nothing to score. The sentence would have a hole in it.',
  fails: { sheet: layered('card'), blames: 'card' },
  passes: { sheet: layered('front') },
  ofText: true,
  check: ({ project, shapes, report }: ProofContext) => {
    for (const { kind, name } of everyProse(project).flatMap(({ references }) => references)) {
      const piece = project.pieces.get(name.value);
      if (!piece || !shapes.nets.has(name.value)) continue;
      if (kind === 'reveal' && !piece.on) {
        report({
          message: `${name.value} lies on nothing, so it has no reveal`,
          remedy: `name the layer, or say with "on:" what ${name.value} lies on`,
          at: name.at,
        });
      } else if (isUnscored(kind, name.value, shapes)) {
        report({
          message: `${name.value} has no score lines, so there is nothing to say for :${kind}`,
          remedy: `name a piece that is scored, or give ${name.value} its "score:"`,
          at: name.at,
        });
      }
    }
  },
};

function isUnscored(kind: Reference['kind'], id: string, { nets }: Shapes): boolean {
  const asks = kind === 'scores' || kind === 'assembly';
  return asks && sheetsOf(nets, id).every(({ net }) => net.folds.length === 0);
}
