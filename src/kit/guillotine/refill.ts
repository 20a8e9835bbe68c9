import { type CutTree, type Rect, WASTE } from './blank.ts';
import type { Axis, Grid } from './grid.ts';
import type { PatternTable } from './pattern-table.ts';

/** The same cuts, with all that was waste cut up in the best way a table knows. */
export function refilled(tree: CutTree, room: Rect, grid: Grid, table: PatternTable): CutTree {
  if (tree.kind === 'blank') return tree;
  if (tree.kind === 'waste') return fill(room, grid, table);
  const { from, at, near, far } = tree;
  const { width, height } = room;
  const [first, second] =
    from === 'left'
      ? [
          { width: at, height },
          { width: width - at, height },
        ]
      : [
          { width, height: at },
          { width, height: height - at },
        ];
  return { ...tree, near: refilled(near, first, grid, table), far: refilled(far, second, grid, table) };
}

function fill({ width, height }: Rect, { across, down, longest }: Grid, table: PatternTable): CutTree {
  const [column, row] = [lastWithin(across, width), lastWithin(down, height)];
  if (table.at(column, row) === 0) return WASTE;
  const [used, usedDown] = [across.at[column] ?? 0, down.at[row] ?? 0];
  const right = (near: CutTree): CutTree =>
    used < width ? { kind: 'cut', from: 'left', at: used, near, far: WASTE } : near;
  const below = (near: CutTree): CutTree =>
    usedDown < height ? { kind: 'cut', from: 'top', at: usedDown, near, far: WASTE } : near;
  const inside = table.treeAt(column, row);
  return height <= longest ? right(below(inside)) : below(right(inside));
}

/** The index of the last position that a length reaches. */
function lastWithin({ at }: Axis, length: number): number {
  let [low, high] = [0, at.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((at[middle] ?? 0) <= length) low = middle;
    else high = middle - 1;
  }
  return low;
}
