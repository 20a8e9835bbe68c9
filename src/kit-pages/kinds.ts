import type { PieceKind, SheetLayout, StockPlan } from '../kit/plan.ts';
import { piecesIn } from '../kit/sheet-tree.ts';
import { pieceSheetNamed } from '../words/names.ts';
import type { Voice } from '../words/voice.ts';

/** The pieces that are cut alike: `front or back`. */
export function kindName({ pieces }: PieceKind, voice: Voice): string {
  const names = pieces.map(({ piece, sheet }) => pieceSheetNamed(piece, sheet, voice.say));
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
