import {
  across,
  along,
  type CutEdge,
  type CutTree,
  padded,
  type Rect,
  resized,
  sideBySide,
  waste,
} from './cut-tree.ts';

/** The same blanks cut without a cut longer than this; undefined where no way is found that keeps their order. */
export function cutWithin(tree: CutTree, longest: number): CutTree | undefined {
  if (longest === Number.POSITIVE_INFINITY) return tree;
  const useful = withoutWaste(tree);
  return useful ? fitted(useful, tree, longest) : waste(tree);
}

/** What is not waste, as close together as it goes: strips of one row may then be of several breadths. */
function withoutWaste(tree: CutTree): CutTree | undefined {
  if (tree.kind !== 'strips') return tree.kind === 'waste' ? undefined : tree;
  const { from } = tree;
  const parts = tree.parts.flatMap((part) => withoutWaste(part) ?? []);
  const [first, second] = parts;
  if (!first || !second) return first;
  const length = parts.reduce((sum, part) => sum + along(part, from), 0);
  const breadth = Math.max(...parts.map((part) => across(part, from)));
  const size = from === 'left' ? { width: length, height: breadth } : { width: breadth, height: length };
  return { ...size, kind: 'strips', from, parts };
}

/** In the corner of a room: laid into it as it is, or once one edge of the room or the other is cut off. */
function fitted(tree: CutTree, room: Rect, longest: number): CutTree | undefined {
  return (
    laid(tree, room, longest) ?? trimmed(tree, room, 'left', longest) ?? trimmed(tree, room, 'top', longest)
  );
}

function laid(tree: CutTree, room: Rect, longest: number): CutTree | undefined {
  if (tree.kind !== 'strips')
    return tree.width === room.width && tree.height === room.height ? tree : undefined;
  const { from, parts } = tree;
  if (across(room, from) > longest) return undefined;
  const strips: CutTree[] = [];
  for (const part of parts) {
    const strip = fitted(part, resized(room, from, along(part, from)), longest);
    if (!strip) return undefined;
    strips.push(strip);
  }
  return padded(sideBySide(strips, from), from, along(room, from));
}

function trimmed(tree: CutTree, room: Rect, from: CutEdge, longest: number): CutTree | undefined {
  const [length, whole] = [along(tree, from), along(room, from)];
  if (length === whole || across(room, from) > longest) return undefined;
  const inner = fitted(tree, resized(room, from, length), longest);
  return inner && padded(inner, from, whole);
}
