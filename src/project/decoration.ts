import type { Length } from '../measure/length.ts';
import type { Edge } from './net-as-written.ts';
import type { AtSize, Placement } from './sizes-as-written.ts';
import type { At, Place } from './source.ts';

/** Edges of a piece or a panel along which a tool repeats its motif. Its lengths are the tool's, in every edition. */
export type PunchedEdge = {
  readonly along: readonly Edge[];
  /** From one motif to the next. */
  readonly pitch: At<Length>;
  /** What of the edge one motif takes up, and how far in it cuts: as far, when absent. */
  readonly hole: At<Length>;
  readonly depth?: At<Length>;
  /** Where the first motif begins, from the left or the top end; else it is worked out. */
  readonly start?: At<Length>;
  /** In another edition than the author's: how many motifs theirs has along each edge. */
  readonly counts?: ReadonlyMap<Edge, number>;
  /** Whether the tool runs on past both ends. */
  readonly through: boolean;
  readonly in?: At<string>;
  readonly at: Place;
};

/** A stamped image on a piece or a panel. Its size is the stamp's, in every edition. */
export type ImpressionAsWritten = {
  readonly stamp: At<string>;
  readonly ink?: At<string>;
  readonly size: AtSize;
  readonly placement: Placement;
  readonly in?: At<string>;
  readonly runsOff: boolean;
  readonly covered: boolean;
  readonly over: boolean;
  readonly at: Place;
};
