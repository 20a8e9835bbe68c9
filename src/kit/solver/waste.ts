import {
  along,
  type CutEdge,
  type CutTree,
  otherEdge,
  padded,
  resized,
  type Strips,
  sideBySide,
  waste,
} from './cut-tree.ts';

/** Strips without the waste they all end in, and that waste beyond them as one part. */
type Apart = { readonly inner: CutTree; readonly rest: CutTree; readonly from: CutEdge };

/**
 * When every strip ends in waste, the least of it can be cut off all of them at once, as one part that is worth
 * keeping, before the strips are cut apart. Undefined where they do not, or the cut would be too long.
 */
export function commonWaste(tree: Strips, longest: number): Apart | undefined {
  const { from, parts } = tree;
  const other = otherEdge(from);
  const common = along(tree, from) > longest ? 0 : Math.min(...parts.map((each) => wasteAtEnd(each, other)));
  if (common === 0) return undefined;
  const shorter = parts.map((each) => withoutEnd(each, other, common));
  return {
    inner: sideBySide(shorter, from),
    rest: resized(waste(tree), other, common),
    from: other,
  };
}

/**
 * The other way round: waste that is cut off first is left on the strips, where it often comes off with a cut that is
 * made anyway. Undefined where there is no such waste, or the cuts would be too long.
 */
export function sinkWaste(tree: Strips, longest: number): Strips | undefined {
  if (tree.parts.length !== 2 || along(tree, tree.from) > longest) return undefined;
  const [inner, rest] = tree.parts;
  if (inner?.kind !== 'strips' || rest?.kind !== 'waste') return undefined;
  const length = along(tree, tree.from);
  return { ...tree, from: inner.from, parts: inner.parts.map((each) => padded(each, tree.from, length)) };
}

/** How much waste a part ends in, away from an edge. Waste alone ends in as much as one likes, up to itself. */
function wasteAtEnd(part: CutTree, from: CutEdge): number {
  if (part.kind === 'waste') return along(part, from);
  const last = part.kind === 'strips' && part.from === from ? part.parts.at(-1) : undefined;
  return last?.kind === 'waste' ? along(last, from) : 0;
}

function withoutEnd(part: CutTree, from: CutEdge, end: number): CutTree {
  const rest = along(part, from) - end;
  if (part.kind !== 'strips') return resized(part, from, rest);
  return padded(sideBySide(part.parts.slice(0, -1), from), from, rest);
}
