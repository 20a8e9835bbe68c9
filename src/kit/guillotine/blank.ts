/** A rectangle in whole steps of some length. */
export type Rect = { readonly width: number; readonly height: number };

/** A kind of rectangle to be cut from a sheet, any number of times. */
export type Blank = Rect & {
  /** Whether it may be cut a quarter turned. */
  readonly turnable: boolean;
};

/** The edge a cut is measured from: `left` for a cut from top to bottom, `top` for one from side to side. */
export type CutEdge = 'left' | 'top';

/**
 * How a rectangle is cut up, each cut running from edge to edge. `at` is the distance from the edge, `near` the part
 * on this side of the cut, `far` the part beyond it. A blank lies in the top left corner of its part and fills it.
 */
export type CutTree =
  | { readonly kind: 'blank'; readonly blank: number; readonly turned: boolean }
  | { readonly kind: 'waste' }
  | {
      readonly kind: 'cut';
      readonly from: CutEdge;
      readonly at: number;
      readonly near: CutTree;
      readonly far: CutTree;
    };

export const WASTE: CutTree = { kind: 'waste' };

/** How many of each blank a tree gives; `kinds` is the number of blanks there are. */
export function countBlanks(tree: CutTree, kinds: number): number[] {
  const counts = new Array<number>(kinds).fill(0);
  const visit = (part: CutTree): void => {
    if (part.kind === 'blank') counts[part.blank] = (counts[part.blank] ?? 0) + 1;
    if (part.kind !== 'cut') return;
    visit(part.near);
    visit(part.far);
  };
  visit(tree);
  return counts;
}

/** The tree without the blanks that are more than `most` of their kind: they become waste. */
export function clipped(tree: CutTree, most: readonly number[]): CutTree {
  const left = [...most];
  const visit = (part: CutTree): CutTree => {
    if (part.kind === 'cut')
      return withoutEmptyCut({ ...part, near: visit(part.near), far: visit(part.far) });
    if (part.kind === 'waste') return part;
    const room = left[part.blank] ?? 0;
    left[part.blank] = room - 1;
    return room > 0 ? part : WASTE;
  };
  return visit(tree);
}

/** A cut with waste on both sides need not be made. */
function withoutEmptyCut(cut: Extract<CutTree, { kind: 'cut' }>): CutTree {
  return cut.near.kind === 'waste' && cut.far.kind === 'waste' ? WASTE : cut;
}

/** The length of the longest cut made in a sheet; 0 when there is none. */
export function longestCut(tree: CutTree, { width, height }: Rect): number {
  if (tree.kind !== 'cut') return 0;
  const { from, at, near, far } = tree;
  if (from === 'left')
    return Math.max(
      height,
      longestCut(near, { width: at, height }),
      longestCut(far, { width: width - at, height }),
    );
  return Math.max(
    width,
    longestCut(near, { width, height: at }),
    longestCut(far, { width, height: height - at }),
  );
}

/** The sizes a blank can be cut in: as it is, and turned where it may be and that is another size. */
export function stancesOf({ width, height, turnable }: Blank): readonly (Rect & { turned: boolean })[] {
  const upright = { width, height, turned: false };
  return turnable && width !== height ? [upright, { width: height, height: width, turned: true }] : [upright];
}
