import type { Fault, FaultKind } from '../project/fault.ts';
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

/** What a rule has to say; the proof adds which rule said it. */
export type Statement = {
  readonly message: string;
  readonly remedy?: string;
  readonly at?: Place;
  readonly notes?: readonly Note[];
  /** Where one rule has graver and lighter cases; else the rule's own. */
  readonly severity?: Severity;
};

export type Report = (statement: Statement) => void;

/** The fault of one kind, with its own fields. */
export type FaultOf<K extends FaultKind['kind']> = Extract<Fault, { readonly kind: K }>;

/** The one kind of fault a rule puts into words, wherever the reader found it: project, settings or shared file. */
export type FaultWords = {
  readonly kind: FaultKind['kind'];
  readonly report: (fault: Fault, report: Report) => void;
};

/**
 * A complete `sheet.md` (and further files of a small workspace) that shows a rule at work; the tests run it.
 * `blames` is the very text a failing example's finding points at; absent where a finding has no place.
 */
export type Example = {
  readonly sheet: string;
  readonly files?: Readonly<Record<string, string>>;
  readonly blames?: string;
};

/**
 * One thing that is checked. One file each; the file's name is the id. A rule needs no `check` when all it reports
 * comes from elsewhere: a fault of its kind, or a problem of shape that names it. The proof sees to both.
 */
export type Rule = {
  readonly id: string;
  readonly severity: Severity;
  /** One sentence, for the list of rules. */
  readonly summary: string;
  /** Why it matters at the table, in a few sentences. */
  readonly why: string;
  readonly fails: Example;
  readonly passes: Example;
  /** Looks at one project. */
  readonly check?: (context: ProofContext) => void;
  /** It looks at what is written only, so that the other edition of a project, with the same text, need not be asked. */
  readonly ownEditionOnly?: true;
  readonly fault?: FaultWords;
};

/** Makes a rule the owner of one kind of fault; `say` puts one such fault into words. */
export function wording<K extends FaultKind['kind']>(
  kind: K,
  say: (fault: FaultOf<K>) => Statement,
): FaultWords {
  return {
    kind,
    report: (fault, report) => {
      if (isOf(kind, fault)) report({ ...placed(fault.at), ...say(fault) });
    },
  };
}

/** A fault of no width at the very start of a file is one of the whole file: it has no place. */
function placed(at: Place): { at?: Place } {
  return at.end === 0 ? {} : { at };
}

function isOf<K extends FaultKind['kind']>(kind: K, fault: Fault): fault is FaultOf<K> {
  return fault.kind === kind;
}
