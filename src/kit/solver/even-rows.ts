import {
  along,
  type CutEdge,
  type CutTree,
  leavesOf,
  otherEdge,
  padded,
  type Rect,
  type Strips,
  shapeOf,
  sideBySide,
} from './cut-tree.ts';

/** Blanks that all lie alike, as rows of columns and as columns of rows; none where they do not. */
export function evenRows(tree: Strips, longest: number): readonly CutTree[] {
  const blanks = leavesOf(tree).filter(({ kind }) => kind === 'blank');
  const [first] = blanks;
  if (!first || blanks.some((each) => shapeOf(each) !== shapeOf(first))) return [];
  return (['left', 'top'] as const).flatMap((from) => rowsOf(tree, first, blanks.length, from, longest));
}

/** Strips as wide as a blank, full ones first; none where they would not hold all, or take too long a cut. */
function rowsOf(
  room: Rect,
  blank: CutTree,
  count: number,
  from: CutEdge,
  longest: number,
): readonly CutTree[] {
  const other = otherEdge(from);
  const most = Math.floor(along(room, other) / along(blank, other));
  const rows = Math.ceil(count / most);
  const [high, width] = [along(blank, from), along(room, other)];
  if (rows * high > along(room, from) || width > longest) return [];
  const parts = Array.from({ length: rows }, (_, row) => {
    const blanks = new Array<CutTree>(Math.min(most, count - row * most)).fill(blank);
    return padded(sideBySide(blanks, other), other, width);
  });
  return [padded(sideBySide(parts, from), from, along(room, from))];
}
