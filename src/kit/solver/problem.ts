import type { Blank, CutTree, Rect } from './cut-tree.ts';

/** What is to be cut from one stock, in whole steps of length. */
export type CuttingProblem = {
  readonly blanks: readonly Blank[];
  /** How many of each blank, at least 1. */
  readonly demand: readonly number[];
  /**
   * The sizes it is sold in; at least one that each blank fits. A cost is a whole number, at least 1: 1 each where
   * sheets are counted. Those of all sizes have no common divisor.
   */
  readonly sheets: readonly (Rect & { readonly cost: number })[];
  /** The longest cut that may be made, if there is one. */
  readonly longest?: number;
  /**
   * Where sizes had to be rounded (blanks up, sheets down): the same rounded the other way, so that what is proven of
   * them holds for the true sizes.
   */
  readonly safe?: { readonly blanks: readonly Rect[]; readonly sheets: readonly Rect[] };
};

/** One way to cut up one sheet. */
export type Pattern = {
  /** The index of the sheet's size. */
  readonly sheet: number;
  readonly tree: CutTree;
  /** How many of each blank it gives. */
  readonly counts: readonly number[];
};

/** A pattern of some value, and what no pattern of its sheet can pass. */
export type Priced = Pattern & { readonly value: number; readonly bound: number };

/** A pattern and how many sheets are cut by it. */
export type Batch = { readonly pattern: Pattern; readonly count: number };

export function costOf(batches: readonly Batch[], { sheets }: CuttingProblem): number {
  return batches.reduce((total, { pattern, count }) => total + count * (sheets[pattern.sheet]?.cost ?? 0), 0);
}

/** What so many of each blank are worth. */
export function worthOf(counts: readonly number[], values: readonly number[]): number {
  return counts.reduce((total, count, blank) => total + count * (values[blank] ?? 0), 0);
}

export function sheetsIn(batches: readonly Batch[]): number {
  return batches.reduce((total, { count }) => total + count, 0);
}

/** What is still wanted when some sheets have been cut; never below zero. */
export function stillWanted(demand: readonly number[], batches: readonly Batch[]): number[] {
  return demand.map((wanted, blank) =>
    Math.max(
      0,
      batches.reduce((left, { pattern, count }) => left - count * (pattern.counts[blank] ?? 0), wanted),
    ),
  );
}
