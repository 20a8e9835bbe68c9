import type { Length, Unit } from '../../measure/length.ts';
import type { At, Place } from '../source.ts';

/** A ready-made form and its settings, by their keys. */
export type FormAsWritten = {
  readonly form: At<string>;
  readonly settings: ReadonlyMap<string, FormSetting>;
  /** What the form measures with: a box written in millimeters has millimeter tabs, whatever its sheet is in. */
  readonly ruler: 'in' | 'mm';
};

/** One `key: value` of a form as read: its lengths in the order written, a number of things, or one of its words. */
export type FormSetting = {
  readonly at: Place;
} /** The unit is that of the last, where they were written. */ & (
  | { readonly kind: 'lengths'; readonly lengths: readonly At<Length>[]; readonly unit?: Unit }
  | { readonly kind: 'count'; readonly count: number }
  | { readonly kind: 'word'; readonly word: string }
);

/** One measurement a form takes. */
export type FormParameter = {
  readonly key: string;
  /** `size` is W x H, `volume` W x D x H (the order is said in `says`), `choice` one of `choices`. */
  readonly kind: 'length' | 'size' | 'volume' | 'count' | 'choice';
  readonly choices?: readonly string[];
  readonly required: boolean;
  /** One sentence for the docs and messages, its default included. */
  readonly says: string;
};

/** What the reader knows of a form: its name, as written after `form:`, and what may be said of it. */
export type FormGrammar = {
  readonly name: string;
  readonly parameters: readonly FormParameter[];
  /** Parameters of which exactly one is given. */
  readonly oneOf?: readonly string[];
};
