import { Length } from '../measure/length.ts';
import type { Size } from '../measure/size.ts';
import type { Ruler } from './ruler.ts';
import { along, type CutEdge, type CutLeaf, type CutTree, leavesOf } from './solver/cut-tree.ts';

/** A rectangle on a sheet, from its left and its top edge. */
export type PaperBox = Size & { readonly left: Length; readonly top: Length };

/** A sheet, or a part of it, as it is cut up, in true lengths. Strips lie one kerf apart; a blank is a kind of piece. */
export type SheetTree = CutTree<PaperBox>;

/** A piece where it is cut out: of which kind, and whether it lies a quarter turned to how its kind's size is given. */
export type PlacedPiece = Extract<CutLeaf<PaperBox>, { kind: 'blank' }>;

/** A sheet of this size cut up as a tree says, its four edges trimmed off first. */
export function layOutSheet({ width, height }: Size, tree: CutTree, margin: Length, ruler: Ruler): SheetTree {
  const whole: PaperBox = { left: Length.zero, top: Length.zero, width, height };
  return trimEdges(whole, margin, ruler.kerf, (box) => layOut(tree, box, ruler));
}

export function piecesIn(tree: SheetTree): readonly PlacedPiece[] {
  return leavesOf(tree).filter((leaf) => leaf.kind === 'blank');
}

/** Off-cuts of at least this much both ways are put aside; common practice, no source. */
const WORTH_KEEPING: Length = Length.of(2, 1, 'in');

/** What is left over and large enough to keep. */
export function offcutsIn(tree: SheetTree): readonly PaperBox[] {
  return leavesOf(tree).filter(
    ({ kind, width, height }) =>
      kind === 'waste' && !width.lessThan(WORTH_KEEPING) && !height.lessThan(WORTH_KEEPING),
  );
}

function layOut(tree: CutTree, box: PaperBox, ruler: Ruler): SheetTree {
  if (tree.kind !== 'strips') return { ...tree, ...box };
  const { from } = tree;
  let before = 0;
  const parts = tree.parts.map((part) => {
    const steps = along(part, from);
    const start = ruler.offset(before);
    before += steps;
    // Waste narrower than the blade is no waste: the blade takes all of it.
    const length = Length.max(Length.zero, ruler.extent(steps));
    return layOut(part, stretch(box, from, start, length), ruler);
  });
  return { ...box, kind: 'strips', from, parts };
}

/** The edges that come off a sheet one after another, each given by the edge its cut is measured from. */
const EDGES = [
  { from: 'left', isNear: true },
  { from: 'top', isNear: true },
  { from: 'left', isNear: false },
  { from: 'top', isNear: false },
] as const;

/** Edges as wide as this come off; `inside` lays out what is left. */
function trimEdges(
  box: PaperBox,
  margin: Length,
  kerf: Length,
  inside: (box: PaperBox) => SheetTree,
  [edge, ...others]: readonly (typeof EDGES)[number][] = EDGES,
): SheetTree {
  if (!edge || margin.sign === 0) return inside(box);
  const { from, isNear } = edge;
  const length = along(box, from);
  const rest = length.minus(margin).minus(kerf);
  const off: SheetTree = {
    ...stretch(box, from, isNear ? Length.zero : length.minus(margin), margin),
    kind: 'waste',
  };
  const left = stretch(box, from, isNear ? length.minus(rest) : Length.zero, rest);
  const inner = trimEdges(left, margin, kerf, inside, others);
  return { ...box, kind: 'strips', from, parts: isNear ? [off, inner] : [inner, off] };
}

/** A stretch of a box away from one of its edges. */
function stretch(box: PaperBox, from: CutEdge, start: Length, length: Length): PaperBox {
  return from === 'left'
    ? { ...box, left: box.left.plus(start), width: length }
    : { ...box, top: box.top.plus(start), height: length };
}
