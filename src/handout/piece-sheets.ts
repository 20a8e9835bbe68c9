import { type Edition, type Editions, ownEdition } from '../edition/editions.ts';
import type { Piece } from '../project/model.ts';
import { type Sheet, sheetsOf } from '../shape/shapes.ts';

/** One sheet of paper that is cut for a piece; `id` is what the shapes know its net by. */
export type PieceSheet = Sheet & { readonly piece: Piece; readonly id: string };

/** Every sheet of every piece, in the order they are written. */
export function pieceSheets({ project, shapes }: Edition): readonly PieceSheet[] {
  return [...project.pieces.values()].flatMap((piece) => {
    const own = piece.id.value;
    return sheetsOf(shapes.nets, own).map((sheet) => ({
      ...sheet,
      piece,
      id: sheet.name === undefined ? own : `${own}.${sheet.name}`,
    }));
  });
}

/** The pieces that need a template: what is scored or has a shape of its own, is punched or stamped. Sheets of forms of several apart. */
export function templatePieces(editions: Editions): readonly string[] {
  return pieceSheets(ownEdition(editions))
    .filter(({ piece, net }) => piece.body.kind !== 'flat' || net.rows || net.impressions)
    .map(({ id }) => id);
}
