import type { CutPiece, PieceKind, SheetLayout, StockPlan } from '../kit/plan.ts';
import { piecesIn } from '../kit/sheet-tree.ts';
import { pieceNamed, sheetOfPiece } from '../words/names.ts';
import { ofVariants } from '../words/variants.ts';
import type { Voice } from '../words/voice.ts';

/** A piece as it is called on paper; among several sessions with its project: `box, Seed keeper`. */
export function cutPieceNamed(cut: CutPiece, voice: Voice): string {
  const piece = ownPieceNamed(cut, voice);
  const title = cut.session?.project.title.value;
  return title === undefined ? piece : voice.say('season-piece', { piece, title });
}

/** A piece as its project calls it, with its variant where that has it otherwise: `box (large)`. */
export function ownPieceNamed({ piece, sheet, variant, session }: CutPiece, voice: Voice): string {
  const name = session?.project.pieces.get(piece)?.name?.value ?? pieceNamed(piece, voice.say);
  return ofVariants(sheetOfPiece(name, sheet, voice.say), variant, voice);
}

/** The pieces that are cut alike: `front or back`. */
export function kindName({ pieces }: PieceKind, voice: Voice): string {
  const names = pieces.map((piece) => cutPieceNamed(piece, voice));
  return new Intl.ListFormat(voice.language, { type: 'disjunction' }).format(names);
}

/** The kinds of pieces a sheet of a layout gives, by their place among all of a plan, and how many of each. */
export function kindsCut(
  { kinds }: StockPlan,
  { tree }: SheetLayout,
): readonly { readonly kind: PieceKind; readonly index: number; readonly count: number }[] {
  const pieces = piecesIn(tree);
  return kinds.flatMap((kind, index) => {
    const count = pieces.filter(({ blank }) => blank === index).length;
    return count > 0 ? [{ kind, index, count }] : [];
  });
}
