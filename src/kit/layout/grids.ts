import type { CutEdge, Rect } from '../guillotine/blank.ts';
import { across, along, leavesOf, type Part, type Strips, shapeOf, stretched, wasteLike } from './part.ts';

/** Pieces that all lie alike, as rows of columns and as columns of rows; none where they do not. */
export function gridsOf(part: Strips, longest: number): readonly Part[] {
  const pieces = leavesOf(part).filter(({ kind }) => kind === 'piece');
  const [first] = pieces;
  if (!first || pieces.some((each) => shapeOf(each) !== shapeOf(first))) return [];
  return (['left', 'top'] as const).flatMap((from) => gridOf(part, first, pieces.length, from, longest));
}

/** Strips as wide as a piece, full ones first; none where they would not hold all, or take too long a cut. */
function gridOf(room: Rect, piece: Part, count: number, from: CutEdge, longest: number): readonly Part[] {
  const other = across(from);
  const most = Math.floor(along(room, other) / along(piece, other));
  const strips = Math.ceil(count / most);
  if (strips * along(piece, from) > along(room, from) || along(room, other) > longest) return [];
  const strip = stretched(wasteLike(room), from, along(piece, from));
  const parts = Array.from({ length: strips }, (_, index) =>
    rowOf(strip, new Array<Part>(Math.min(most, count - index * most)).fill(piece), other),
  );
  return [rowOf(wasteLike(room), parts, from)];
}

/** Parts side by side from an edge, and what is left as waste. */
function rowOf(room: Part, parts: readonly Part[], from: CutEdge): Part {
  const rest = along(room, from) - parts.reduce((sum, each) => sum + along(each, from), 0);
  const all = rest > 0 ? [...parts, stretched(wasteLike(room), from, rest)] : parts;
  const [only] = all;
  if (only && all.length === 1) return only;
  return { width: room.width, height: room.height, kind: 'strips', from, parts: all };
}
