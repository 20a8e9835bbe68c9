import type { Piece } from '../../project/model.ts';
import type { At } from '../../project/source.ts';
import type { Rule } from '../rule.ts';
import { quote } from '../words.ts';

/** The keys of two pieces or variants, and what both are called on paper. */
type Facts = { readonly named: string; readonly name: string; readonly other: At<string> };

export const sameName: Rule<Facts> = {
  severity: 'warning',
  summary: 'No two pieces, and no two variants, have the same name on paper.',
  why: 'If two share a name, a sheet says to stick the base on the base, and nobody can tell their columns apart.',
  fails: {
    pieces:
      'mat: { name: base, stock: cream, cut: 4 x 5 }\nmat2: { name: base, stock: cream, cut: 3 x 4, on: mat }',
    blames: 'base',
  },
  passes: { with: 'mat2: { name: middle', insteadOf: 'mat2: { name: base' },
  ownEditionOnly: true,
  *check({ project }) {
    const first = new Map<string, Piece>();
    for (const piece of project.pieces.values()) {
      const { id, name } = piece;
      const said = (name ?? id).value;
      const other = first.get(said);
      // One of two may be called by its key, and the other's name is to blame.
      const at = (name ?? other?.name ?? id).at;
      if (other) yield { at, facts: { named: id.value, name: said, other: other.id } };
      else first.set(said, piece);
    }
  },
  say: ({ named, name, other }) => ({
    message: `${quote(named)} is called ${quote(name)} on paper, and so is ${quote(other.value)}`,
    remedy: 'give each a "name:" of its own',
    notes: [{ message: `${quote(other.value)} is written here`, at: other.at }],
  }),
};
