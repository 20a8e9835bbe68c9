import { type CutTree, clipped, countBlanks } from './cut-tree.ts';
import type { CutGrid } from './grid.ts';

/** What is to be found: the grid says which blanks there are, what sheet, and how long a cut may be. */
export type Wanted = {
  readonly grid: CutGrid;
  /** What each blank is worth: whole numbers, not negative. */
  readonly values: readonly number[];
  /** The most copies of each. */
  readonly demand: readonly number[];
};

/** A whole sheet cut up, how many of each blank it gives, and what they are worth. */
export type Valued = { readonly tree: CutTree; readonly counts: readonly number[]; readonly value: number };

/** A whole sheet without the copies that are too many. */
export function valued(whole: CutTree, { grid, values, demand }: Wanted): Valued {
  const tree = clipped(whole, demand);
  const counts = countBlanks(tree, grid.blanks.length);
  return { tree, counts, value: counts.reduce((sum, count, blank) => sum + count * (values[blank] ?? 0), 0) };
}
