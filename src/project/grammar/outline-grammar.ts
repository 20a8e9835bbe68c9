import type { Length } from '../../measure/length.ts';
import type { At } from '../source.ts';
import type { FormParameter, FormSetting } from './form-grammar.ts';

/** The outline of a flat piece or an opening that is no rectangle. */
export type OutlineAsWritten = ReadyOutline | DrawnOutline;

/** A ready-made outline and what is said of it, by its keys. */
export type ReadyOutline = {
  readonly kind: 'ready';
  readonly shape: At<string>;
  readonly settings: ReadonlyMap<string, FormSetting>;
};

/** Points of an outline from the left and top of the box that they fill, clockwise. */
export type OutlinePoints = readonly { readonly x: Length; readonly y: Length }[];

/** An outline of the project's own, read from its drawing. */
export type DrawnOutline = {
  readonly kind: 'drawn';
  readonly path: At<string>;
  readonly points: OutlinePoints;
};

/** What the reader knows of an outline: its name, as written after `shape:`, and what may be said of it. */
export type OutlineGrammar = {
  readonly name: string;
  /** None has to be given. A key means the same in every outline that has it. */
  readonly parameters: readonly FormParameter[];
};

/** Why a drawing is not read; its size and the most there may be, in kilobytes. */
export type FileProblem =
  | { readonly kind: 'missing' | 'outside' }
  | { readonly kind: 'too large'; readonly kilobytes: number; readonly most: number };

/** The text of a drawing, by its path in the project's folder. */
export type ReadDrawing = (path: string) => { readonly text: string } | FileProblem;
