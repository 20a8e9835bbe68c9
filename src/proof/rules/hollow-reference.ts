import type { Piece, Reference, ReferenceKind } from '../../project/model.ts';
import { type Shapes, sheetsOf } from '../../shape/shapes.ts';
import { sheetWith } from '../example.ts';
import { isNamed } from '../part-names.ts';
import { everyProse } from '../prose.ts';
import type { ProofContext, Rule, Statement } from '../rule.ts';

const layered = (named: string): string =>
  sheetWith({
    pieces: 'card: { stock: cream, cut: 4 x 5 }\nfront: { stock: cream, cut: 3 x 4, on: card }',
    body: `## Layer\nStick :piece[front] on :piece[card], leaving :reveal[${named}] all round.\n`,
  });

export const hollowReference: Rule<'hollow-reference'> = {
  id: 'hollow-reference',
  severity: 'error',
  summary: 'What a step asks the sheet to say of a piece, there is to be said.',
  why: 'A piece that lies on nothing has no reveal, one without score lines has nothing to score. The sentence would have a hole in it.',
  fails: { sheet: layered('card'), blames: 'card' },
  passes: { sheet: layered('front') },
  ownEditionOnly: true,
  check: ({ project, shapes, report }: ProofContext) => {
    for (const reference of everyProse(project).flatMap(({ references }) => references)) {
      const [id = ''] = reference.name.value.split('.');
      const piece = project.pieces.get(id);
      const known = piece && isNamed(shapes, reference.name.value);
      const statement = known && statementOn(reference, piece, shapes);
      if (statement) report({ ...statement, at: reference.name.at });
    }
  },
};

/** What may be said of a panel (`box.front`) as well, and of a further sheet (`box.lid`). */
const OF_PANELS: ReadonlySet<ReferenceKind> = new Set(['piece', 'size', 'drawing']);
const OF_SHEETS: ReadonlySet<ReferenceKind> = new Set([...OF_PANELS, 'scores', 'trims', 'assembly']);

function statementOn({ kind, name }: Reference, piece: Piece, shapes: Shapes): Statement | undefined {
  const id = piece.id.value;
  const isSheet = shapes.nets.has(name.value);
  if (name.value !== id && !(isSheet ? OF_SHEETS : OF_PANELS).has(kind)) {
    const part = isSheet ? 'sheet' : 'panel';
    return {
      message: `${name.value} is a ${part} of ${id}, and :${kind} is said of a whole piece`,
      remedy: `name a piece, such as :${kind}[${id}]`,
    };
  }
  if (kind === 'reveal' && !piece.on) {
    return {
      message: `${id} lies on nothing, so it has no reveal`,
      remedy: `name the layer, or say with "on:" what ${id} lies on`,
    };
  }
  const lack = lackOf(kind, name.value, piece, shapes);
  if (!lack) return undefined;
  const message = `${name.value} has ${lack.none}, so there is nothing to say for :${kind}`;
  return { message, remedy: `name a piece that ${lack.other}, or give ${id} its ${lack.key}` };
}

type Lack = { readonly none: string; readonly other: string; readonly key: string };

/** What a piece would need to have something said of it that it hasn't. */
function lackOf(kind: ReferenceKind, name: string, { body }: Piece, { nets }: Shapes): Lack | undefined {
  const sheets = sheetsOf(nets, name).map(({ net }) => net);
  const isScored = (nets.get(name)?.scores.length ?? 0) > 0;
  const isCut = sheets.some(({ folds, waste, slits }) => folds.length > 0 && waste.length + slits.length > 0);
  const isStuck = body.kind === 'form' || sheets.some(({ glue }) => glue.length > 0);
  if (kind === 'scores' && !isScored) {
    return { none: 'no score lines', other: 'is scored', key: '"score:"' };
  }
  if (kind === 'trims' && !isCut) {
    return { none: 'nothing to cut once it is scored', other: 'has', key: '"trim:" or "slit:"' };
  }
  if (kind === 'assembly' && !isStuck) {
    return { none: 'nothing that is stuck to itself', other: 'has', key: '"glue:"' };
  }
  return undefined;
}
