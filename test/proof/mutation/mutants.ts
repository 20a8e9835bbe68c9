import type { RuleId } from '../../../src/project/finding.ts';
import type { Net } from '../../../src/shape/net.ts';
import { foldFindings } from '../fold-rules.ts';
import { type Mutation, mutationsOf } from './mutations.ts';
import type { Specimen } from './specimens.ts';

/** A right net with a slip in it, and the rules that object: with an error or a warning, or in a note only. */
export type Mutant = Mutation & {
  readonly of: Specimen;
  readonly objections: readonly RuleId[];
  readonly notes: readonly RuleId[];
};

export function mutantsOf(of: Specimen): readonly Mutant[] {
  return mutationsOf(of.net).map((mutation) => ({ ...mutation, of, ...answersTo(of, mutation.net) }));
}

/** What the rules of the fold say of a project once one of its nets is another. */
export function answersTo(
  { id, workspace, project, shapes }: Specimen,
  net: Net,
): Pick<Mutant, 'objections' | 'notes'> {
  const found = foldFindings(workspace, project, new Map([...shapes.nets, [id, net]]));
  const rulesOf = (isNote: boolean): RuleId[] => [
    ...new Set(found.filter(({ severity }) => (severity === 'note') === isNote).map(({ rule }) => rule)),
  ];
  return { objections: rulesOf(false), notes: rulesOf(true) };
}
