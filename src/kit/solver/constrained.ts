import { BlockSearch } from './block-search.ts';
import { type CutTree, longestCut } from './cut-tree.ts';
import type { CutGrid } from './grid.ts';
import { PatternTable } from './pattern-table.ts';
import { refilled } from './refill.ts';
import { type Valued, valued, type Wanted } from './wanted.ts';

type BestPattern = Valued & {
  /** No pattern is worth more than this; the value itself where the search came to its end. */
  readonly bound: number;
};

/**
 * The best pattern with at most so many copies of each blank; the best found, and a bound, when `pairs` of blocks have
 * been looked at before the search came to its end.
 */
export function bestConstrained(wanted: Wanted, pairs: number): BestPattern {
  const { grid, values } = wanted;
  const table = new PatternTable(grid, values);
  let best = valued(table.tree(), wanted);
  if (best.value === table.value) return { ...best, bound: table.value };
  const attempt = (whole: CutTree): void => {
    const found = valued(whole, wanted);
    if (found.value > best.value && longestCut(found.tree) <= grid.longest) best = found;
  };
  const left = new BlockSearch(wanted, table, pairs, () => best.value, attempt).run();
  const bound = isSure(grid) ? Math.min(Math.max(best.value, left), table.value) : table.value;
  return { ...best, bound };
}

/** Where cuts are limited or positions left out, joining blocks may miss a pattern: its end proves nothing. */
function isSure({ exact, longest }: CutGrid): boolean {
  return exact && longest === Number.POSITIVE_INFINITY;
}

const MOST_LISTED = 4_000;
const MOST_PAIRS = 400_000;

/** Every choice of blanks that is worth at least `least`; undefined where there are too many to list, or it is not sure. */
export function listConstrained(wanted: Wanted, least: number): readonly Valued[] | undefined {
  if (!isSure(wanted.grid)) return undefined;
  const listed = new Map<string, Valued>();
  const add = (whole: CutTree): void => {
    const found = valued(whole, wanted);
    if (found.value >= least) listed.set(found.counts.join(), found);
  };
  const floor = (): number => (listed.size > MOST_LISTED ? Number.POSITIVE_INFINITY : least - 1);
  const table = new PatternTable(wanted.grid, wanted.values);
  const left = new BlockSearch(wanted, table, MOST_PAIRS, floor, add).run();
  return listed.size <= MOST_LISTED && left < least ? [...listed.values()] : undefined;
}

/** Kinds of which there are too few leave room; that room is filled with others so many times. */
const MOST_REFILLS = 5;

/**
 * A good pattern with at most so many copies of each blank, soon: the best for any number of copies, without those that
 * are too many, their room filled with what there is more of.
 */
export function goodConstrained(wanted: Wanted): Valued {
  const { grid, values } = wanted;
  let best = valued(new PatternTable(grid, values).tree(), wanted);
  for (let times = 0; times < MOST_REFILLS; times += 1) {
    const table = leftOver(best, wanted);
    if (!table) break;
    const next = valued(refilled(best.tree, grid, table), wanted);
    if (next.value <= best.value || longestCut(next.tree) > grid.longest) break;
    best = next;
  }
  return best;
}

/** The best patterns of those blanks of which there are more; undefined where there are none. */
function leftOver({ counts }: Valued, { grid, values, demand }: Wanted): PatternTable | undefined {
  const rest = values.map((value, blank) => ((counts[blank] ?? 0) < (demand[blank] ?? 0) ? value : 0));
  return rest.some((value) => value > 0) ? new PatternTable(grid, rest) : undefined;
}
