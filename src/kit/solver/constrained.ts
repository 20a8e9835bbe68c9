import { lastWithin } from './axis.ts';
import { BlockSearch, type Wanted } from './block-search.ts';
import { type CutTree, clipped, countBlanks, inCorner, longestCut } from './cut-tree.ts';
import type { CutGrid } from './grid.ts';
import { PatternTable } from './pattern-table.ts';
import { worthOf } from './problem.ts';

/** A whole sheet cut up, how many of each blank it gives, and what they are worth. */
type Valued = { readonly tree: CutTree; readonly counts: readonly number[]; readonly value: number };

/** A whole sheet without the copies that are too many. */
function valued(whole: CutTree, { values, demand }: Wanted): Valued {
  const tree = clipped(whole, demand);
  const counts = countBlanks(tree, demand.length);
  return { tree, counts, value: worthOf(counts, values) };
}

/** Kinds of which there are too few leave room; that room is filled with others so many times. */
const MOST_REFILLS = 5;

/**
 * A good pattern with at most so many copies of each blank, soon: the best for any number of copies, without those that
 * are too many, their room filled with what there is more of.
 */
export function goodConstrained(
  wanted: Wanted,
  table: PatternTable = new PatternTable(wanted.grid, wanted.values),
): Valued {
  const { grid, values, demand } = wanted;
  let best = valued(table.tree(), wanted);
  for (let times = 0; times < MOST_REFILLS && best.value < table.value; times += 1) {
    const { counts } = best;
    const rest = values.map((value, blank) => ((counts[blank] ?? 0) < (demand[blank] ?? 0) ? value : 0));
    if (rest.every((value) => value === 0)) break;
    const next = valued(refilled(best.tree, grid, new PatternTable(grid, rest)), wanted);
    if (next.value <= best.value || longestCut(next.tree) > grid.longest) break;
    best = next;
  }
  return best;
}

/** The same cuts, with all that was waste cut up in the best way a table knows. */
function refilled(tree: CutTree, grid: CutGrid, table: PatternTable): CutTree {
  if (tree.kind === 'blank') return tree;
  if (tree.kind === 'strips')
    return { ...tree, parts: tree.parts.map((each) => refilled(each, grid, table)) };
  const [column, row] = [lastWithin(grid.across, tree.width), lastWithin(grid.down, tree.height)];
  return inCorner(table.treeAt(column, row), tree, grid.longest);
}

/**
 * The best pattern with at most so many copies of each blank; the best found, and a bound no pattern is worth more
 * than, when `pairs` of blocks have been looked at before the search came to its end.
 */
export function bestConstrained(wanted: Wanted, pairs: number): Valued & { readonly bound: number } {
  const { grid, values } = wanted;
  const table = new PatternTable(grid, values);
  let best = goodConstrained(wanted, table);
  if (best.value === table.value) return { ...best, bound: table.value };
  const attempt = (whole: CutTree): void => {
    const found = valued(whole, wanted);
    if (found.value > best.value && longestCut(found.tree) <= grid.longest) best = found;
  };
  const left = new BlockSearch(wanted, table, pairs, () => best.value, attempt).run();
  return { ...best, bound: isSure(grid) ? Math.min(Math.max(best.value, left), table.value) : table.value };
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
