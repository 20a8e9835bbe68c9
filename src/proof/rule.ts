import type { Project, Workspace } from '../project/model.ts';
import type { Place } from '../project/source.ts';
import type { Shapes } from '../shape/shapes.ts';
import type { Note, Severity } from './finding.ts';

/** What a rule may look at. */
export type ProofContext = {
  readonly workspace: Workspace;
  readonly project: Project;
  /** Nets, panels and layer geometry of the project's pieces. */
  readonly shapes: Shapes;
  readonly report: Report;
};

export type Report = (finding: {
  readonly message: string;
  readonly remedy?: string;
  readonly at?: Place;
  readonly notes?: readonly Note[];
  /** Where one rule has graver and lighter cases; else the rule's own. */
  readonly severity?: Severity;
}) => void;

/** A complete `sheet.md` (and further files of a small workspace) that shows a rule at work; the tests run it. */
export type Example = { readonly sheet: string; readonly files?: Readonly<Record<string, string>> };

/** One thing that is checked. One file each; the file's name is the id. */
export type Rule = {
  readonly id: string;
  readonly severity: Severity;
  /** One sentence, for the list of rules. */
  readonly summary: string;
  /** Why it matters at the table, in a few sentences. */
  readonly why: string;
  readonly fails: Example;
  readonly passes: Example;
  readonly check: (context: ProofContext) => void;
};
