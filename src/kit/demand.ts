import { quarterTurned, type Size, sameSize } from '../measure/size.ts';
import type { Piece, Project, Stock } from '../project/model.ts';
import { stockOf } from '../shape/caliper.ts';
import { keptUpright } from '../shape/keep-upright.ts';
import { type Shapes, sheetsOf } from '../shape/shapes.ts';
import type { CutPiece, PieceKind } from './plan.ts';

/** What one kit takes of one stock. */
export type StockDemand = {
  readonly stock: Stock;
  /** Whether pieces may be cut a quarter turned. */
  readonly turnable: boolean;
  readonly kinds: readonly PieceKind[];
};

/** What one kit takes of every stock, in the order the pieces name them. */
export function demandOf(project: Project, shapes: Shapes): readonly StockDemand[] {
  const cut = new Map<Stock, CutPiece[]>();
  for (const piece of project.pieces.values()) {
    const stock = stockOf(piece, project);
    if (stock) cut.set(stock, [...(cut.get(stock) ?? []), ...cutPiecesOf(piece, shapes)]);
  }
  return [...cut].map(([stock, pieces]) => {
    const turnable = keptUpright(stock) === undefined;
    return { stock, turnable, kinds: kindsOf(pieces, turnable) };
  });
}

/** None where the size is not known. */
export function cutPiecesOf({ id: { value: piece }, count }: Piece, { nets }: Shapes): readonly CutPiece[] {
  return sheetsOf(nets, piece).map(({ name: sheet, net: { size } }) => {
    const name = sheet === undefined ? piece : `${piece}.${sheet}`;
    return { name, piece, sheet, size, perKit: count.value };
  });
}

/** Pieces of the same size together; turned ones too where turning is allowed. */
function kindsOf(cut: readonly CutPiece[], turnable: boolean): readonly PieceKind[] {
  const kinds: { size: Size; pieces: PieceKind['pieces'][number][] }[] = [];
  for (const piece of cut) {
    const { size } = piece;
    const same = kinds.find((kind) => sameSize(kind.size, size));
    const turned = turnable ? kinds.find((kind) => sameSize(kind.size, quarterTurned(size))) : undefined;
    const home = same ?? turned;
    if (home) home.pieces.push({ ...piece, flipped: !same });
    else kinds.push({ size, pieces: [{ ...piece, flipped: false }] });
  }
  return kinds;
}
