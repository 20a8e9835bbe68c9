import { type CutTree, inCorner } from './cut-tree.ts';
import type { CutAxis, CutGrid } from './grid.ts';
import type { PatternTable } from './pattern-table.ts';

/** The same cuts, with all that was waste cut up in the best way a table knows. */
export function refilled(tree: CutTree, grid: CutGrid, table: PatternTable): CutTree {
  if (tree.kind === 'blank') return tree;
  if (tree.kind === 'strips')
    return { ...tree, parts: tree.parts.map((each) => refilled(each, grid, table)) };
  const [column, row] = [lastWithin(grid.across, tree.width), lastWithin(grid.down, tree.height)];
  return inCorner(table.treeAt(column, row), tree, grid.longest);
}

/** The index of the last position that a length reaches. */
function lastWithin({ at }: CutAxis, length: number): number {
  let [low, high] = [0, at.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((at[middle] ?? 0) <= length) low = middle;
    else high = middle - 1;
  }
  return low;
}
