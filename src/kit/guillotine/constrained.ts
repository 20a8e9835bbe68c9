import { type CutTree, clipped, countBlanks, longestCut, WASTE } from './blank.ts';
import { BlockSearch, treeOf, trimmed, type Wanted } from './block-search.ts';

import { PatternTable } from './pattern-table.ts';
import { refilled } from './refill.ts';

export type { Wanted } from './block-search.ts';

type Cut = { readonly tree: CutTree; readonly counts: readonly number[]; readonly value: number };

export type Found = Cut & {
  /** No pattern is worth more than this; the value itself where the search came to its end. */
  readonly bound: number;
};

/**
 * The best pattern with at most so many copies of each blank; the best found, and a bound, when `pairs` of blocks have
 * been looked at before the search came to its end.
 */
export function bestConstrained(wanted: Wanted, pairs: number): Found {
  const { grid, demand, values } = wanted;
  const table = new PatternTable(grid, values);
  const anyNumber = cutOf(table.tree(), wanted);
  if (anyNumber.value === table.value) return { ...anyNumber, bound: table.value };
  let best: Cut = { tree: WASTE, counts: demand.map(() => 0), value: 0 };
  const attempt = (whole: CutTree): void => {
    const cut = cutOf(whole, wanted);
    if (cut.value > best.value && longestCut(cut.tree, grid.sheet) <= grid.longest) best = cut;
  };
  const search = new BlockSearch(wanted, table, pairs, {
    floor: () => best.value,
    made: (block) => block.value > best.value && attempt(trimmed(block, grid.sheet, grid.longest)),
    taken: (block) =>
      attempt(search.remainder.complete(treeOf(block, grid.longest), block.column, block.row)),
  });
  attempt(anyNumber.tree);
  const left = search.run();
  const { value: ceiling } = table;
  const bound = isSure(wanted) ? Math.max(best.value, left) : ceiling;
  return { ...best, bound: Math.min(bound, ceiling) };
}

/** Kinds of which there are too few leave room; that room is filled with others so many times. */
const MOST_REFILLS = 5;

/**
 * A good pattern with at most so many copies of each blank, soon: the best for any number of copies, without those that
 * are too many, their room filled with what there is more of.
 */
export function goodConstrained(wanted: Wanted): Cut {
  const { grid, values } = wanted;
  let best = cutOf(new PatternTable(grid, values).tree(), wanted);
  for (let times = 0; times < MOST_REFILLS; times += 1) {
    const table = leftOver(best, wanted);
    if (!table) break;
    const next = cutOf(refilled(best.tree, grid.sheet, grid, table), wanted);
    if (next.value <= best.value || longestCut(next.tree, grid.sheet) > grid.longest) break;
    best = next;
  }
  return best;
}

/** The best patterns of those blanks of which there are more; undefined where there are none. */
function leftOver({ counts }: Cut, { grid, values, demand }: Wanted): PatternTable | undefined {
  const rest = values.map((value, blank) => ((counts[blank] ?? 0) < (demand[blank] ?? 0) ? value : 0));
  return rest.some((value) => value > 0) ? new PatternTable(grid, rest) : undefined;
}

export type Listed = { readonly patterns: readonly Cut[]; readonly complete: boolean };

/**
 * Every choice of blanks that can be cut from one sheet and is worth at least `least`, by the blanks it gives; not
 * complete when there are more than `most` or the pairs are used up.
 */
export function listConstrained(wanted: Wanted, least: number, pairs: number, most: number): Listed {
  const { sheet, longest } = wanted.grid;
  const table = new PatternTable(wanted.grid, wanted.values);
  const found = new Map<string, Cut>();
  const search = new BlockSearch(wanted, table, pairs, {
    floor: () => (found.size > most ? Number.POSITIVE_INFINITY : least - 1),
    made: (block) => {
      const key = block.counts.join();
      if (block.value < least || found.has(key)) return;
      found.set(key, { tree: trimmed(block, sheet, longest), counts: [...block.counts], value: block.value });
    },
    taken: () => {},
  });
  const left = search.run();
  return { patterns: [...found.values()], complete: isSure(wanted) && found.size <= most && left < least };
}

/** Where cuts are limited or positions left out, joining blocks may miss a pattern: its end proves nothing. */
function isSure({ grid }: Wanted): boolean {
  return grid.exact && grid.longest === Number.POSITIVE_INFINITY;
}

/** A whole sheet without the copies that are too many. */
function cutOf(whole: CutTree, { grid, values, demand }: Wanted): Cut {
  const tree = clipped(whole, demand);
  const counts = countBlanks(tree, grid.blanks.length);
  return {
    tree,
    counts,
    value: counts.reduce((total, count, index) => total + count * (values[index] ?? 0), 0),
  };
}
