import type { Length } from '../measure/length.ts';
import type { Size } from '../measure/size.ts';
import type { Money, Stock, StockSheet } from '../project/model.ts';
import type { CutEdge } from './guillotine/blank.ts';

/** A rectangle on a sheet, from its left and its top edge. */
export type Box = Size & { readonly left: Length; readonly top: Length };

/** Pieces of one size, cut alike: the front and the back of a box, say. */
export type PieceKind = {
  /** As the project names them: `front`, `box.lid`. */
  readonly pieces: readonly { readonly name: string; readonly perKit: number; readonly flipped: boolean }[];
  /** The first one's; the `flipped` ones have it the other way round. */
  readonly size: Size;
};

/** A piece where it is cut out. `turned` when it lies a quarter turned, as its kind's size is given. */
export type Placement = Box & { readonly kind: number; readonly turned: boolean };

/** One cut at the trimmer, from edge to edge of the part it is made in. */
export type Cut = {
  /** The step it belongs to: all cuts of a step are made at one setting. */
  readonly step: number;
  readonly part: Box;
  readonly from: CutEdge;
  /** The distance from that edge: what the trimmer is set to. */
  readonly setting: Length;
  readonly length: Length;
};

/** What comes off in a step, and how many of it. */
export type Yield =
  | { readonly kind: 'piece'; readonly piece: number; readonly count: number }
  | { readonly kind: 'strip' | 'off-cut'; readonly size: Size; readonly count: number };

/** Cuts made one after another without setting the trimmer anew. */
export type Step = {
  /** From 1. */
  readonly number: number;
  readonly from: CutEdge;
  readonly setting: Length;
  /** What is cut: the whole sheet, or strips of this size. */
  readonly part: Size & { readonly count: number; readonly isSheet: boolean };
  /** Cuts to each of these. */
  readonly cutsEach: number;
  readonly length: Length;
  /** Longer than the trimmer's longest cut. */
  readonly tooLong: boolean;
  readonly yields: readonly Yield[];
};

/** Sheets cut alike. */
export type Layout = {
  readonly sheet: StockSheet;
  readonly size: Size;
  readonly count: number;
  readonly placements: readonly Placement[];
  readonly cuts: readonly Cut[];
  readonly steps: readonly Step[];
  /** What is left over and large enough to keep. */
  readonly offcuts: readonly Box[];
  /** Which of the pieces of its kind each placement is, for so many of the sheets. */
  readonly namings: readonly Naming[];
};

export type Naming = { readonly count: number; readonly names: readonly string[] };

/** How one stock is cut for all kits. */
export type StockPlan = {
  readonly stock: Stock;
  readonly kinds: readonly PieceKind[];
  /** Sheets. */
  readonly total: number;
  /** No plan can do with fewer sheets than this. */
  readonly bound: number;
  /** No plan can be better: fewer sheets, or cheaper where several sizes have prices. */
  readonly proven: boolean;
  readonly seconds: number;
  /** Where sheets of several sizes have prices: the cost of this plan, and what no plan can be under. */
  readonly price?: { readonly total: Money; readonly bound: Money };
  readonly layouts: readonly Layout[];
};
