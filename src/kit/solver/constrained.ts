import { lastWithin } from './axis.ts';
import { BlockSearch, type Wanted } from './block-search.ts';
import { type CutTree, clipped, countBlanks, inCorner, longestCut } from './cut-tree.ts';
import { cutWithin } from './cut-within.ts';
import type { CutGrid } from './grid.ts';
import { PatternTable } from './pattern-table.ts';
import { worthOf } from './problem.ts';
import type { Work } from './work.ts';

/** A whole sheet cut up, how many of each blank it gives, and what they are worth. */
type Valued = { readonly tree: CutTree; readonly counts: readonly number[]; readonly value: number };

/** A whole sheet without the copies that are too many. */
function valued(whole: CutTree, wanted: Wanted): Valued {
  const counts = countWithin(whole, wanted);
  return { tree: clipped(whole, wanted.demand), counts, value: worthOf(counts, wanted.values) };
}

/** How many of each blank a whole sheet gives, those that are too many left out. */
function countWithin(whole: CutTree, { demand }: Wanted): readonly number[] {
  return countBlanks(whole, demand.length).map((count, blank) => Math.min(count, demand[blank] ?? 0));
}

/** Kinds of which there are too few leave room; that room is filled with others so many times. */
const MOST_REFILLS = 5;

/**
 * A good pattern with at most so many copies of each blank, soon: the best for any number of copies, without those that
 * are too many, their room filled with what there is more of.
 */
export function goodConstrained(
  wanted: Wanted,
  work: Work,
  table: PatternTable = tableOf(wanted.grid, wanted.values, work),
): Valued {
  const { grid, values, demand } = wanted;
  let best = valued(table.tree(), wanted);
  for (let times = 0; times < MOST_REFILLS && best.value < table.value; times += 1) {
    const { counts } = best;
    const rest = values.map((value, blank) => ((counts[blank] ?? 0) < (demand[blank] ?? 0) ? value : 0));
    if (rest.every((value) => value === 0)) break;
    const next = valued(refilled(best.tree, grid, tableOf(grid, rest, work)), wanted);
    if (next.value <= best.value || longestCut(next.tree) > grid.longest) break;
    best = next;
  }
  return best;
}

/** Looking at so many positions takes one step. */
const POSITIONS = 500;

/** The best patterns for some values, any number of each blank allowed. */
export function tableOf(grid: CutGrid, values: readonly number[], work: Work): PatternTable {
  const [columns, rows] = [grid.across.at.length, grid.down.at.length];
  work.spend((columns * rows * (columns + rows)) / POSITIONS);
  return new PatternTable(grid, values);
}

/** The same cuts, with all that was waste cut up in the best way a table knows. */
function refilled(tree: CutTree, grid: CutGrid, table: PatternTable): CutTree {
  if (tree.kind === 'blank') return tree;
  if (tree.kind === 'strips')
    return { ...tree, parts: tree.parts.map((each) => refilled(each, grid, table)) };
  const [column, row] = [lastWithin(grid.across, tree.width), lastWithin(grid.down, tree.height)];
  return inCorner(table.treeAt(column, row), tree, grid.longest);
}

/** The same where a cut may be of any length: what is proven of it holds where cuts are limited too. */
function unlimited(wanted: Wanted): Wanted {
  return { ...wanted, grid: { ...wanted.grid, longest: Number.POSITIVE_INFINITY } };
}

/**
 * The best pattern with at most so many copies of each blank; the best found, and a bound no pattern is worth more
 * than, when `pairs` of blocks have been looked at before the search came to its end.
 */
export function bestConstrained(
  wanted: Wanted,
  pairs: number,
  work: Work,
): Valued & { readonly bound: number } {
  const { grid, values, demand } = wanted;
  const table = tableOf(grid, values, work);
  let best = goodConstrained(wanted, work, table);
  if (best.value === table.value || pairs === 0) return { ...best, bound: table.value };
  const attempt = (whole: CutTree): void => {
    const counts = countWithin(whole, wanted);
    const value = worthOf(counts, values);
    const tree = value > best.value ? cutWithin(clipped(whole, demand), grid.longest) : undefined;
    if (tree) best = { tree, counts, value };
  };
  const free = unlimited(wanted);
  const freeTable = grid.longest === Number.POSITIVE_INFINITY ? table : tableOf(free.grid, values, work);
  const left = searchBlocks(new BlockSearch(free, freeTable, pairs, () => best.value, attempt), work);
  return { ...best, bound: grid.exact ? Math.min(Math.max(best.value, left), table.value) : table.value };
}

/** @returns the most that any pattern can be worth that was not found. */
function searchBlocks(search: BlockSearch, work: Work): number {
  const most = search.run();
  work.spend(search.looked);
  return most;
}

const MOST_LISTED = 4_000;
const MOST_PAIRS = 400_000;

/** Every choice of blanks that is worth at least `least`; undefined where there are too many to list, or it is not sure. */
export function listConstrained(wanted: Wanted, least: number, work: Work): readonly Valued[] | undefined {
  const { exact, longest } = wanted.grid;
  if (!exact) return undefined;
  const listed = new Map<string, Valued | undefined>();
  const add = (whole: CutTree): void => {
    const counts = countWithin(whole, wanted);
    const value = worthOf(counts, wanted.values);
    const key = counts.join();
    if (value < least || listed.get(key)) return;
    const tree = cutWithin(clipped(whole, wanted.demand), longest);
    listed.set(key, tree && { tree, counts, value });
  };
  const floor = (): number => (listed.size > MOST_LISTED ? Number.POSITIVE_INFINITY : least - 1);
  const free = unlimited(wanted);
  const table = tableOf(free.grid, free.values, work);
  const left = searchBlocks(new BlockSearch(free, table, MOST_PAIRS, floor, add), work);
  const all = [...listed.values()].filter((each) => each !== undefined);
  // Choices that no way within the trimmer was found for might still have one.
  return all.length === listed.size && listed.size <= MOST_LISTED && left < least ? all : undefined;
}
