import type { Finding, RuleFacts, RuleId } from '../project/finding.ts';
import type { Commons, Project } from '../project/model.ts';
import type { Place } from '../project/source.ts';
import type { Shapes } from '../shape/shapes.ts';
import type { Severity, Words } from './told.ts';

/** What a rule may look at. */
export type ProofContext = {
  readonly workspace: Commons;
  readonly project: Project;
  /** Nets, panels and layer geometry of the project's pieces. */
  readonly shapes: Shapes;
};

/** What a rule finds: where, and what its words need to know. */
export type Evidence<F> = { readonly at: Place; readonly facts: F };

/** Lines of a small `sheet.md`, as they would stand there under what they are called by; what is absent is usual. */
type Example = {
  /** Beside the title. */
  readonly head?: string;
  readonly stock?: string;
  readonly pieces?: string;
  /** Under `measurements:`, beside the others. */
  readonly more?: string;
  /** The Markdown below. */
  readonly body?: string;
  /** What of a box by its score lines is other than usual, by its keys; and of one that is tucked in. */
  readonly box?: Readonly<Record<string, string>>;
  readonly tuckBox?: Readonly<Record<string, string>>;
  /** The whole text instead. */
  readonly sheet?: string;
  /** A second folder with the same sheet, and further files by their paths. */
  readonly folder?: string;
  readonly files?: Readonly<Record<string, string>>;
};

/** `blames` is the very text the finding points at; absent where it has no place. */
type FailingExample = Example & { readonly blames?: string };

/** An example of its own, or the failing one with other words in it. */
type PassingExample = Example | { readonly with: string; readonly insteadOf: string };

/**
 * One thing that is checked, and the words for it. One file each; the file's name is the id. `F` is what its findings
 * tell: plain data, nothing where the place says all. A rule needs no `check` when all its findings come from
 * elsewhere: from reading, from the making of a shape, from what only a make or a kit looks at.
 */
export type Rule<F = Record<string, never>> = {
  readonly severity: Severity;
  /** One sentence, for the list of rules. */
  readonly summary: string;
  /** Why it matters at the table, in a few sentences. */
  readonly why: string;
  /** The tests run both, and the docs show them. Absent where what is wrong is the program. */
  readonly fails?: FailingExample;
  readonly passes?: PassingExample;
  /** Looks at one project. */
  readonly check?: (context: ProofContext) => Iterable<Evidence<F>>;
  /**
   * It is asked about the edition that a project is written in only: the other has the same words, and its numbers are
   * ours (a score line of a form between two grooves is nothing the writer could fix).
   */
  readonly ownEditionOnly?: true;
  /** It is right in a project with variants where it is right in one of them: a number in the text may be that one's. */
  readonly oneVariantWillDo?: true;
  /** In words; of the other edition of a project, where only that one has it. */
  readonly say: (facts: F, at: Place, edition?: Finding['edition']) => Words;
};

/** Every rule by its id; a finding's own rule takes its very facts. */
export type Rules = { readonly [K in RuleId]: Rule<RuleFacts[K]> };
