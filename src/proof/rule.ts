import type { Facts, RuleId } from '../project/finding.ts';
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

/** The rules whose findings are put into words where they are found. */
type Spoken =
  | 'bottom-gap'
  | 'circular-base'
  | 'corner-overhang'
  | 'does-not-close'
  | 'edition-strained'
  | 'flap-too-long'
  | 'form-limit'
  | 'glue-misses'
  | 'glue-overlap'
  | 'holds-too-big'
  | 'hollow-reference'
  | 'layer-overhang'
  | 'loose-part'
  | 'missing-disclosure'
  | 'missing-slit'
  | 'no-such-view'
  | 'panels-collide'
  | 'picture-alternative'
  | 'piece-exceeds-sheet'
  | 'piece-unused'
  | 'placement-clash'
  | 'prose-measurement'
  | 'same-slug'
  | 'score-doubled'
  | 'score-off-groove'
  | 'score-order'
  | 'score-outside'
  | 'session-off-schedule'
  | 'thin-reveal'
  | 'tuck-does-not-fit'
  | 'turned-layer'
  | 'uneven-fold'
  | 'uneven-reveal'
  | 'unknown-allergen'
  | 'walls-unequal';

declare module '../project/finding.ts' {
  interface Facts extends Readonly<Record<Spoken, Statement>> {}
}

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
 * One thing that is checked. One file each; the file's name is the id. A rule needs no `check` when all its
 * findings come from elsewhere: from the reading of the files, or from a problem of shape that names it.
 */
export type Rule<K extends RuleId = RuleId> = {
  readonly id: K;
  readonly severity: Severity;
  /** One sentence, for the list of rules. */
  readonly summary: string;
  /** Why it matters at the table, in a few sentences. */
  readonly why: string;
  /** Absent where no workspace can show the rule at work, for what is wrong is the program. */
  readonly fails?: Example;
  readonly passes?: Example;
  /** Looks at one project. */
  readonly check?: (context: ProofContext) => void;
  /** It looks at what is written only, so that the other edition of a project, with the same text, need not be asked. */
  readonly ownEditionOnly?: true;
  /** Puts a finding into words, in English. */
  readonly say?: (facts: Facts[K], at: Place) => Statement;
};

/** Every rule by its id; a finding's own rule takes its very facts. */
export type Rules = { readonly [K in RuleId]: Rule<K> };

/** Any one of the rules. */
export type AnyRule = Rules[RuleId];
