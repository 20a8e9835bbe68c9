import { type CutEdge, type CutTree, type Rect, WASTE } from '../guillotine/blank.ts';

/**
 * A part of a sheet as it is cut at the trimmer: a piece, waste, or strips that are cut off one after another from the
 * same edge.
 */
export type Part = Rect &
  (
    | { readonly kind: 'piece'; readonly blank: number; readonly turned: boolean }
    | { readonly kind: 'waste' }
    | { readonly kind: 'strips'; readonly from: CutEdge; readonly parts: readonly Part[] }
  );

export type Strips = Extract<Part, { kind: 'strips' }>;

/** A cut tree as parts, two strips to a cut. */
export function partOf(tree: CutTree, { width, height }: Rect): Part {
  if (tree.kind === 'blank') return { width, height, kind: 'piece', blank: tree.blank, turned: tree.turned };
  if (tree.kind === 'waste') return { width, height, kind: 'waste' };
  const { from, at } = tree;
  const near = partOf(tree.near, from === 'left' ? { width: at, height } : { width, height: at });
  const far = partOf(
    tree.far,
    from === 'left' ? { width: width - at, height } : { width, height: height - at },
  );
  return { width, height, kind: 'strips', from, parts: [near, far] };
}

/** The same part as a tree of cuts. */
export function treeOfPart(part: Part): CutTree {
  if (part.kind === 'piece') return { kind: 'blank', blank: part.blank, turned: part.turned };
  if (part.kind === 'waste') return WASTE;
  const [first, ...rest] = part.parts;
  if (!first) return WASTE;
  if (rest.length === 0) return treeOfPart(first);
  const far = treeOfPart({ ...part, parts: rest });
  return { kind: 'cut', from: part.from, at: along(first, part.from), near: treeOfPart(first), far };
}

/** A part's length away from the edge it is cut from. */
export function along({ width, height }: Rect, from: CutEdge): number {
  return from === 'left' ? width : height;
}

/** The other edge. */
export function across(from: CutEdge): CutEdge {
  return from === 'left' ? 'top' : 'left';
}

/** A part made longer or shorter; what is in it stays as it is. */
export function stretched<T extends Part>(part: T, from: CutEdge, length: number): T {
  return from === 'left' ? { ...part, width: length } : { ...part, height: length };
}

/** Waste the size of a part. */
export function wasteLike({ width, height }: Rect): Part {
  return { width, height, kind: 'waste' };
}

/** What two parts have in common when they are cut in the same way. */
export function shapeOf(part: Part): string {
  const size = `${part.width}x${part.height}`;
  if (part.kind === 'piece') return `${size} piece ${part.blank}`;
  if (part.kind === 'waste') return `${size} waste`;
  return `${size} ${part.from} [${part.parts.map(shapeOf).join(', ')}]`;
}

/** Everything in a part that is not cut any further. */
export function leavesOf(part: Part): readonly Part[] {
  return part.kind === 'strips' ? part.parts.flatMap(leavesOf) : [part];
}
