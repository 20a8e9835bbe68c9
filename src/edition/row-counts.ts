import type { Piece } from '../project/model.ts';
import { type Nets, sheetsOf } from '../shape/sheets.ts';

/** A piece whose punched edges are to have as many motifs as those of its nets have. */
export function withCounts(piece: Piece, nets: Nets): Piece {
  if (piece.edge.length === 0) return piece;
  const rows = sheetsOf(nets, piece.id.value).flatMap(({ net }) => net.rows ?? []);
  const edge = piece.edge.map((entry) => {
    const own = rows.filter(({ written }) => written === entry);
    return { ...entry, counts: new Map(own.map(({ side, count }) => [side, count])) };
  });
  return { ...piece, edge };
}
