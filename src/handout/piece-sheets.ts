import { type Edition, type Editions, ownEdition } from '../edition/editions.ts';
import type { Piece } from '../project/model.ts';
import { writeName } from '../project/ref.ts';
import { type Sheet, sheetsOf } from '../shape/sheets.ts';
import { variantsOf } from '../words/variants.ts';

/** One sheet of paper that is cut for a piece; `id` is what the shapes know its net by. */
export type PieceSheet = Sheet & { readonly piece: Piece; readonly id: string };

/** Every sheet of every piece, in the order they are written. */
export function pieceSheets({ project, shapes }: Edition): readonly PieceSheet[] {
  return [...project.pieces.values()].flatMap((piece) => {
    const own = piece.id.value;
    return sheetsOf(shapes.nets, own).map((sheet) => ({
      ...sheet,
      piece,
      id: writeName({ piece: own, part: sheet.name }),
    }));
  });
}

/** The id of every sheet that is cut in any of the variants, in the order they are written. */
export function sheetIds(editions: Editions): readonly string[] {
  return [...new Set(sheetsOfAll(editions).map(({ id }) => id))];
}

function sheetsOfAll(editions: Editions): readonly PieceSheet[] {
  return variantsOf(editions).flatMap((variant) => pieceSheets(ownEdition(variant)));
}

/** The pieces that need a template: what is scored or has a shape of its own, has openings, is punched or stamped. Sheets of forms of several apart. */
export function templatePieces(editions: Editions): readonly string[] {
  const shaped = sheetsOfAll(editions).filter(
    ({ piece: { body }, net }) =>
      body.kind !== 'flat' || body.outline || net.openings || net.rows || net.impressions,
  );
  return [...new Set(shaped.map(({ id }) => id))];
}
