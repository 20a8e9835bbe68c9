import type { RuleId } from '../../../src/project/finding.ts';
import type { Net } from '../../../src/shape/net.ts';
import { sheetsOf } from '../../../src/shape/sheets.ts';
import { eachFoldFinding } from '../fold-rules.ts';
import { type Mutation, mutationsOf } from './mutations.ts';
import type { Specimen } from './specimens.ts';

/** What the proof says of a net: the first error or warning, and what it noted before. */
type Answer = { readonly objection?: RuleId; readonly notes: readonly RuleId[] };

/** A right net with a slip in it, and what is said of that. */
export type Mutant = Mutation & Answer & { readonly of: Specimen };

export function mutantsOf(of: Specimen): readonly Mutant[] {
  return mutationsOf(of.net).map((mutation) => ({ ...mutation, of, ...answerTo(of, mutation.net) }));
}

/** What the rules of the fold say of a project once one of its nets is another. */
export function answerTo({ piece, sheet, workspace, project, shapes }: Specimen, net: Net): Answer {
  const notes: RuleId[] = [];
  const sheets = sheetsOf(shapes.nets, piece).map((each) => (each === sheet ? { ...each, net } : each));
  for (const { rule, severity } of eachFoldFinding(
    workspace,
    project,
    new Map([...shapes.nets, [piece, sheets]]),
  )) {
    if (severity !== 'note') return { objection: rule, notes };
    notes.push(rule);
  }
  return { notes };
}
