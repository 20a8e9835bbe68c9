import { nameRemedy } from '../../project/nearest.ts';
import { partNames } from '../part-names.ts';
import type { Rule } from '../rule.ts';
import { quote } from '../words.ts';

/** The name that is not there, and those that are. */
type Facts = { readonly name: string; readonly among: readonly string[] };

export const unknownPart: Rule<Facts> = {
  severity: 'error',
  summary: 'Every name under `names:` is that of a panel or an opening.',
  why: 'A slip in the name of a panel would leave the usual word on paper without anyone noticing.',
  fails: {
    pieces: 'card: { stock: cream, form: single-fold card, size: 5 1/2 x 4 1/4 }',
    more: 'names: { frnt: cover }',
    blames: 'frnt',
  },
  passes: { with: 'front: cover', insteadOf: 'frnt: cover' },
  ownEditionOnly: true,
  oneVariantWillDo: true,
  *check({ project, shapes }) {
    // A piece that could not be read may have it.
    if (!project.names.pieces.every((piece) => shapes.nets.has(piece))) return;
    const among = [...new Set([...project.pieces.keys()].flatMap((piece) => partNames(shapes, piece)))];
    for (const { name } of project.called) {
      if (!among.includes(name.value)) yield { at: name.at, facts: { name: name.value, among } };
    }
  },
  say: ({ name, among }) => ({
    message: `there is no panel ${quote(name)}`,
    remedy: nameRemedy(name, among),
  }),
};
