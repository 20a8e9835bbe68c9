/** A rectangle; in whole steps of some length where nothing else is said. */
export type Rect<L = number> = { readonly width: L; readonly height: L };

/** The edge a cut is measured from: `left` for a cut from top to bottom, `top` for one from side to side. */
export type CutEdge = 'left' | 'top';

/** A rectangle cut up no further: one of the blanks, which fills it, or waste. `R` is how a rectangle is given. */
export type CutLeaf<R = Rect> = CutBlank<R> | (R & { readonly kind: 'waste' });

type CutBlank<R> = R & { readonly kind: 'blank'; readonly blank: number; readonly turned: boolean };

/** A rectangle cut into strips, one after another from the same edge, each cut running from edge to edge. */
export type Strips<R = Rect> = R & {
  readonly kind: 'strips';
  readonly from: CutEdge;
  readonly parts: readonly CutTree<R>[];
};

/** How a rectangle is cut up. Every part says its own size. */
export type CutTree<R = Rect> = CutLeaf<R> | Strips<R>;

/** A kind of rectangle to be cut from a sheet, any number of times. */
export type Blank = Rect & {
  /** Whether it may be cut a quarter turned. */
  readonly turnable: boolean;
};

/** The sizes in which a blank can be cut from a sheet: as it is, and turned where it may be and that is another size. */
export function stancesOn(
  { width, height, turnable }: Blank,
  sheet: Rect,
): readonly (Rect & { turned: boolean })[] {
  const upright = { width, height, turned: false };
  const turned = { width: height, height: width, turned: true };
  const stances = turnable && width !== height ? [upright, turned] : [upright];
  return stances.filter((stance) => stance.width <= sheet.width && stance.height <= sheet.height);
}

/** The other edge. */
export function otherEdge(from: CutEdge): CutEdge {
  return from === 'left' ? 'top' : 'left';
}

/** A rectangle's length away from the edge it is cut from. */
export function along<L>({ width, height }: Rect<L>, from: CutEdge): L {
  return from === 'left' ? width : height;
}

/** The length of a cut that is measured from this edge. */
export function across<L>(rect: Rect<L>, from: CutEdge): L {
  return along(rect, otherEdge(from));
}

/** A rectangle made longer or shorter away from an edge; what is in it stays as it is. */
export function resized<T extends Rect>(rect: T, from: CutEdge, length: number): T {
  return from === 'left' ? { ...rect, width: length } : { ...rect, height: length };
}

/** A rectangle as waste. */
export function waste({ width, height }: Rect): CutLeaf {
  return { width, height, kind: 'waste' };
}

/** Parts of one breadth cut off one after another from an edge; one alone is itself. */
export function sideBySide(parts: readonly CutTree[], from: CutEdge): CutTree {
  const [first, second] = parts;
  if (!first) throw new Error('a row of nothing');
  if (!second) return first;
  const length = parts.reduce((sum, part) => sum + along(part, from), 0);
  const width = from === 'left' ? length : first.width;
  const height = from === 'left' ? first.height : length;
  return { width, height, kind: 'strips', from, parts };
}

/** A tree made as long as this away from an edge, by waste beyond it. */
export function padded(tree: CutTree, from: CutEdge, length: number): CutTree {
  const rest = length - along(tree, from);
  if (rest === 0) return tree;
  const whole = resized(waste(tree), from, length);
  if (tree.kind === 'waste') return whole;
  const parts = tree.kind === 'strips' && tree.from === from ? tree.parts : [tree];
  return { ...whole, kind: 'strips', from, parts: [...parts, resized(whole, from, rest)] };
}

/** A tree in the corner of a room: what it does not fill is cut off, from the left first if that cut is short enough. */
export function inCorner(
  tree: CutTree,
  { width, height }: Rect,
  longest: number = Number.POSITIVE_INFINITY,
): CutTree {
  return height <= longest
    ? padded(padded(tree, 'top', height), 'left', width)
    : padded(padded(tree, 'left', width), 'top', height);
}

/** Everything that is cut up no further, in the order of the cuts. */
export function leavesOf<R>(tree: CutTree<R>): readonly CutLeaf<R>[] {
  return tree.kind === 'strips' ? tree.parts.flatMap(leavesOf) : [tree];
}

/** Those of strips, which are asked for again for every strip that they are part of. */
const shapes = new WeakMap<object, string>();

/** What two trees have in common that are cut in the same way. */
export function shapeOf(tree: CutTree<Rect<unknown>>): string {
  const size = `${tree.width} x ${tree.height}`;
  if (tree.kind === 'blank') return `${size} blank ${tree.blank}`;
  if (tree.kind === 'waste') return size;
  const shape = shapes.get(tree) ?? `${size} ${tree.from} [${tree.parts.map(shapeOf).join(', ')}]`;
  shapes.set(tree, shape);
  return shape;
}

/** How many of each blank a tree gives; `kinds` is the number of blanks there are. */
export function countBlanks(tree: CutTree, kinds: number): number[] {
  const counts = new Array<number>(kinds).fill(0);
  const visit = (part: CutTree): void => {
    if (part.kind === 'strips') part.parts.forEach(visit);
    else if (part.kind === 'blank') counts[part.blank] = (counts[part.blank] ?? 0) + 1;
  };
  visit(tree);
  return counts;
}

/** The tree without the blanks that are more than `most` of their kind: they become waste. */
export function clipped(tree: CutTree, most: readonly number[]): CutTree {
  const left = [...most];
  const visit = (part: CutTree): CutTree => {
    if (part.kind === 'waste') return part;
    if (part.kind === 'strips') {
      const parts = part.parts.map(visit);
      return parts.every(({ kind }) => kind === 'waste') ? waste(part) : { ...part, parts };
    }
    const room = left[part.blank] ?? 0;
    left[part.blank] = room - 1;
    return room > 0 ? part : waste(part);
  };
  return visit(tree);
}

/** The length of the longest cut made in a sheet; 0 when there is none. */
export function longestCut(tree: CutTree): number {
  return tree.kind === 'strips' ? Math.max(across(tree, tree.from), ...tree.parts.map(longestCut)) : 0;
}
