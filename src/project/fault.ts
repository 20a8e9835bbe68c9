import type { LengthProblem } from '../measure/notation.ts';
import type { Place } from './source.ts';

/**
 * Something the reader could not take, as plain data. The reader never throws for what a person wrote and never
 * phrases a message: each kind is turned into a finding by the rule of `src/proof/rules/` that owns it.
 */
export type Fault = { readonly at: Place } & FaultKind;

export type FaultKind =
  | {
      readonly kind: 'unreadable-length';
      readonly text: string;
      readonly problem: LengthProblem;
      readonly what: string;
      /** How many lengths belong there. */
      readonly count: 1 | 2 | 3;
    }
  /** A key nobody knows; `known` are those allowed there, `where` names the map (`pieces.box`). */
  | {
      readonly kind: 'unknown-key';
      readonly key: string;
      readonly known: readonly string[];
      readonly where: string;
    }
  /** The same key twice in one map; `first` is where it stands first. */
  | { readonly kind: 'repeated-key'; readonly key: string; readonly first: Place }
  | { readonly kind: 'missing-value'; readonly key: string; readonly where: string }
  /** A value that is not what its key takes: `expected` in words, `actual` as written. */
  | {
      readonly kind: 'unexpected-value';
      readonly key: string;
      readonly expected: string;
      readonly actual: string;
    }
  /** A name that is not there; `among` are the names that are, `what` is the kind of thing (`piece`, `stock`, `panel`). */
  | {
      readonly kind: 'unknown-reference';
      readonly what: string;
      readonly name: string;
      readonly among: readonly string[];
    }
  | { readonly kind: 'no-such-date'; readonly text: string }
  | { readonly kind: 'broken-yaml'; readonly problem: string; readonly remedy?: string }
  | { readonly kind: 'no-frontmatter' }
  | { readonly kind: 'empty-file' }
  | { readonly kind: 'not-text' }
  /** Markdown nested deeper than anybody means; of the text nothing is read then. */
  | { readonly kind: 'nested-too-deep' }
  | { readonly kind: 'unreadable-file'; readonly problem: string }
  /** HTML, a script link or the like in a project: shown as text or left out, never as code. */
  | { readonly kind: 'unsafe-content'; readonly what: string }
  /** A picture's path that is absolute, an address, or leaves the project's folder. */
  | { readonly kind: 'outside-picture'; readonly path: string }
  | { readonly kind: 'missing-picture'; readonly path: string }
  /** A picture that is there and cannot be shown; found when it is made fit for a page. */
  | { readonly kind: 'unreadable-picture'; readonly path: string; readonly problem: string }
  /** A language that no labels are in; `known` are those that some are in. Found when the labels are looked up. */
  | { readonly kind: 'unknown-language'; readonly language: string; readonly known: readonly string[] }
  /** Labels that a language has no words for yet, by their keys. */
  | { readonly kind: 'missing-label'; readonly language: string; readonly keys: readonly string[] };
