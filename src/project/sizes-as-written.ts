import type { Length, Unit } from '../measure/length.ts';
import type { At, Place } from './source.ts';

/** A size with the place of each of its numbers. */
export type AtSize = {
  readonly width: At<Length>;
  readonly height: At<Length>;
  readonly at: Place;
  /** The unit it was written in, where it was. */
  readonly unit?: Unit;
};

/** Three numbers, as written: width, depth or height in the order its reader documents. */
export type AtVolume = readonly [At<Length>, At<Length>, At<Length>];

/** Distances from the base's edges and a turn; what is not given is centered. */
export type Placement = {
  readonly left?: At<Length>;
  readonly right?: At<Length>;
  readonly top?: At<Length>;
  readonly bottom?: At<Length>;
  /** Degrees clockwise about the layer's own center, 0 ≤ turn < 360. */
  readonly turn?: At<number>;
};
