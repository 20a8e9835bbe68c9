import type { Length } from '../../measure/length.ts';

/** What is published of a thing; lengths in each edition that is printed, exact. */
export type PublishedValue = {
  /** The name of a paper, a base or an outline, a number of pieces, the cells that are cut, corners, edges, stamps. */
  readonly word?: string | undefined;
  /** Degrees clockwise. */
  readonly turn?: number | undefined;
  /** Of a place, the ways in which no distance is given: it lies centered there, whatever the lengths have become. */
  readonly centered?: 'both' | 'across' | 'upright' | undefined;
  /** How many sides or scallops an outline has. */
  readonly count?: number | undefined;
  readonly inch?: readonly Length[] | undefined;
  readonly metric?: readonly Length[] | undefined;
};

/** Which thing of which piece. */
export type PublishedThing = {
  readonly piece: string;
  /** A further sheet of a form that is made of several: `lid`. */
  readonly sheet?: string | undefined;
  /** The variant that has it otherwise than the others; absent where all have it alike. */
  readonly variant?: string | undefined;
  /**
   * Its lengths: width and height; positions; where lines that are scored in part begin and end; the ends of angled lines,
   * across and down; the radius of all corners or of each that is named; left and top edge; for cuts that no cell names,
   * their boxes; for openings the distances from the edges of their panels, and their sizes; where each row of motifs
   * starts, its pitch and the width of a motif; how far each stamped image is from the left and the top.
   */
  readonly what:
    | 'size'
    | 'scores'
    | 'runs'
    | 'slants'
    | 'cuts'
    | 'openings'
    | 'corners'
    | 'outline'
    | 'paper'
    | 'pieces'
    | 'place'
    | 'edge'
    | 'impressions';
  /** The edge that scores are measured from. */
  readonly from?: 'left' | 'right' | 'top' | 'bottom' | undefined;
};

export type PublishedFact = PublishedThing & PublishedValue;

/** Everything that counts when a project is compared with what was published, in the order of the sheet. */
export type PublishedState = {
  readonly pieces: readonly PublishedFact[];
  readonly steps: readonly { readonly title: string; readonly words: string }[];
  /**
   * What was chosen in one edition for each length that is written in the other, the sizes of a piece (`part`) and where it
   * lies (`place`): the first of `inch` is the first of `metric`. Early ledgers have none.
   */
  readonly settled?: readonly SettledNumbers[] | undefined;
};

export type SettledNumbers = {
  readonly piece: string;
  /** The value of `shared/` that the piece begins from: `shared.small-box`. */
  readonly use?: string | undefined;
  readonly variant?: string | undefined;
  readonly kind: 'part' | 'place';
  readonly inch: readonly Length[];
  readonly metric: readonly Length[];
};

/** A thing that is new has nothing before, one that is gone nothing after. */
export type PieceChange = PublishedThing & {
  readonly before?: PublishedValue | undefined;
  readonly after?: PublishedValue | undefined;
};

/** `before` and `after` are the titles of a step. */
export type StepChange = {
  readonly steps: 'new' | 'gone' | 'reworded' | 'renamed' | 'reordered';
  readonly before?: string | undefined;
  readonly after?: string | undefined;
};

/** A published state of a project. */
export type Revision = {
  readonly number: number;
  /** `YYYY-MM-DD`. */
  readonly date: string;
  /** The edition that leads: the one the project is written in, unless only the other is printed. */
  readonly own?: 'inch' | 'metric' | undefined;
  /** What changed; a text is a sentence that was recorded as it was said then. */
  readonly changes: readonly (PieceChange | StepChange | string)[];
  /** The pieces to cut again where they were recorded with such sentences; else they follow from the changes. */
  readonly recut?: readonly string[] | undefined;
};

/** `revisions.yaml` of a project. */
export type Ledger = { readonly revisions: readonly Revision[]; readonly state?: PublishedState | undefined };

export const NO_REVISIONS: Ledger = { revisions: [] };

/** Its name in the project's folder. */
export const LEDGER_FILE = 'revisions.yaml';
