import type { Blank, CutTree, Rect } from './cut-tree.ts';

/** Sheets of one size, and what it takes to have more of them. */
export type SheetSource = Rect & {
  /** Of a pack: a whole number, at least 1; 1 where sheets are counted. Those of all sources have no common divisor. */
  readonly cost: number;
  /** Sheets in a pack; 1 where nothing is said, 0 where none can be bought. */
  readonly pack?: number;
  /** Sheets that are there already and cost nothing; 0 where nothing is said. */
  readonly there?: number;
  /** What using up one of them counts among plans of the same cost: a whole number, at least 1. */
  readonly use?: number;
};

/** What is to be cut from one stock, in whole steps of length. */
export type CuttingProblem = {
  readonly blanks: readonly Blank[];
  /** How many of each blank, at least 1. */
  readonly demand: readonly number[];
  /** At least one that each blank fits and that can be bought. */
  readonly sheets: readonly SheetSource[];
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

/** What a plan costs at the shop, and what it uses up: of two plans at one cost the one that uses up less is better. */
export type Spending = { readonly cost: number; readonly used: number };

/** Whole packs of what is not there already. */
export function spendingOf(batches: readonly Batch[], { sheets }: CuttingProblem): Spending {
  const spent = sheets.map(({ cost, pack = 1, there = 0, use = 1 }, sheet) => {
    const count = sheetsIn(batches.filter(({ pattern }) => pattern.sheet === sheet));
    const missing = Math.max(0, count - there);
    if (missing > 0 && pack === 0) return { cost: Number.POSITIVE_INFINITY, used: count * use };
    return { cost: missing > 0 ? Math.ceil(missing / pack) * cost : 0, used: count * use };
  });
  return {
    cost: spent.reduce((sum, { cost }) => sum + cost, 0),
    used: spent.reduce((sum, { used }) => sum + used, 0),
  };
}

/** Whether plans at one cost may use up more or less: sheets lie there, or come in packs, and not all are alike. */
export function hasChoice({ sheets }: CuttingProblem): boolean {
  return sheets.length > 1 || sheets.some(({ pack = 1, there = 0 }) => pack !== 1 || there > 0);
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
