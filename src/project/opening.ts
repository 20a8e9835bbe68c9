import type { Length } from '../measure/length.ts';
import type { RoundedCorners } from './corners.ts';
import type { OutlineAsWritten } from './grammar/outline-grammar.ts';
import type { AtSize, Placement } from './sizes-as-written.ts';
import type { At, Place } from './source.ts';

/** What is cut in a piece: a window, a slot for a tab to go through, or a pop-up. */
export type OpeningAsWritten = {
  readonly name: At<string>;
  readonly cut: OpeningCut;
  /** The panel that it is in; a piece that is not folded has but one. */
  readonly in?: At<string>;
  readonly placement: Placement;
  /** Where the whole entry stands. */
  readonly at: Place;
};

/** A part that falls out, a straight cut of some length, or a strip across a fold that comes forward. */
export type OpeningCut =
  | {
      readonly kind: 'window';
      readonly size: AtSize;
      readonly outline?: OutlineAsWritten;
      /** Of a rectangle alone. */
      readonly corners?: RoundedCorners;
    }
  | { readonly kind: 'slot'; readonly length: At<Length> }
  | PopUpCut;

/** Two slits across a fold, and the strip between them. */
export type PopUpCut = {
  readonly kind: 'pop-up';
  readonly width: At<Length>;
  /** How far the slits run into the panels on either side of the fold: the same, or the first and the second. */
  readonly depths: readonly [At<Length>, At<Length>];
  /** The panels on either side of the fold; where there is but one fold, that. */
  readonly across?: At<readonly [string, string]>;
};
