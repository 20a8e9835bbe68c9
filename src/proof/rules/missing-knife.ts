import { languageOf, wordsIn } from '../../project/language.ts';
import { wordFinder } from '../../project/prose/word-finder.ts';
import { sheetsOf } from '../../shape/sheets.ts';
import { slitsWithin } from '../../shape/slits-within.ts';
import type { ProofContext, Rule } from '../rule.ts';

type Facts = { readonly piece: string };

export const missingKnife: Rule<Facts> = {
  severity: 'note',
  summary: 'A knife is among the supplies where a slit begins and ends within the paper.',
  why: 'A trimmer cuts from edge to edge, and scissors need an edge or a gap to begin at. A slit with neither needs a knife, a ruler and a mat, and nobody at the table has those unless the list says so.',
  fails: {
    head: 'supplies:\n  - { item: Score board, kind: tool }',
    pieces: `band:
  stock: cream
  cut: 8 1/2 x 4
  score: [{ from: left, at: [2, 4, 6, 8] }, { from: top, at: [1, 3] }]
  slit: [A|B 2]
  folds: { 1|2: flat, 2|3: flat }
  glue: { E1: A1 }`,
    blames: 'A|B 2',
  },
  passes: { with: 'item: Craft knife', insteadOf: 'item: Score board' },
  ownEditionOnly: true,
  *check(context) {
    if (hasKnife(context)) return;
    const { project, shapes } = context;
    for (const { id, body } of project.pieces.values()) {
      if (!sheetsOf(shapes.nets, id.value).some(({ net }) => slitsWithin(net).length > 0)) continue;
      const slit = body.kind === 'net' ? body.slit[0] : undefined;
      yield { at: slit?.at ?? id.at, facts: { piece: id.value } };
    }
  },
  say: ({ piece }) => ({
    message: `a slit in ${piece} begins and ends within the paper, where only a knife gets in, and no knife is among the supplies`,
    remedy: 'add { item: craft knife, kind: tool } to "supplies:", or extend the slit to an edge',
  }),
};

/** Whether the supplies name a knife, as a thing or as what will do instead; nobody knows in a language without words. */
function hasKnife({ workspace, project }: ProofContext): boolean {
  const words = wordsIn(languageOf(project, workspace.site), 'reads-knives');
  const knife = wordFinder(words);
  return (
    words === '' ||
    project.supplies.some(({ item, instead }) => knife.test(`${item.value} ${instead?.value ?? ''}`))
  );
}
