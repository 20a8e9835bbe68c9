import type { Length } from '../measure/length.ts';
import type { DrawnOutline, OutlineAsWritten } from './outline-grammar.ts';
import type { AtSize, Placement } from './sizes-as-written.ts';
import type { At, Place } from './source.ts';

/** What is cut out of a piece: a window, or a slot for a tab to go through. */
export type OpeningAsWritten = {
  readonly name: At<string>;
  readonly cut: OpeningCut;
  /** The panel that it is in; a piece that is not folded has but one. */
  readonly in?: At<string>;
  readonly placement: Placement;
  /** Where the whole entry stands. */
  readonly at: Place;
};

/** A part that falls out, or a straight cut of some length. */
export type OpeningCut =
  | {
      readonly kind: 'window';
      readonly size: AtSize;
      readonly outline?: OutlineAsWritten;
      readonly drawn?: DrawnOutline;
    }
  | { readonly kind: 'slot'; readonly length: At<Length> };
