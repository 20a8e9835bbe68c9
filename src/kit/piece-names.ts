import type { NamedSheets, PieceKind } from './plan.ts';
import type { PlacedPiece } from './sheet-tree.ts';

/** So many sheets that give the same pieces, without their names. */
type AlikeSheets = { readonly count: number; readonly pieces: readonly PlacedPiece[] };

/** A piece, and how many are still to be found among those of its kind. */
type PieceLeft = { readonly piece: PieceKind['pieces'][number]; left: number };

/** One place of a layout is this piece up to this one of its sheets. */
type Run = { readonly piece: PieceKind['pieces'][number]; readonly end: number };

/**
 * Says which of the pieces of one size is which, so that exactly so many of each name are cut: place after place is
 * named, each on all sheets of its layout. Sheets of a layout differ only where a name comes to its end among them.
 * @returns for each layout the names of its pieces, in one way for all its sheets, or in several for some each.
 */
export function namePieces(
  layouts: readonly AlikeSheets[],
  kinds: readonly PieceKind[],
): readonly (readonly NamedSheets[])[] {
  const waiting = kinds.map(({ pieces }) =>
    pieces.map((piece): PieceLeft => ({ piece, left: piece.perKit * piece.kits })),
  );
  return layouts.map(({ count, pieces }) => {
    const places = pieces.map(({ blank }) => takePieces(waiting[blank] ?? [], count));
    const ends = [...new Set(places.flatMap((runs) => runs.map(({ end }) => end)))].sort((a, b) => a - b);
    return ends.map((end, index) => ({
      count: end - (ends[index - 1] ?? 0),
      pieces: places.flatMap((runs) => runs.find((run) => run.end >= end)?.piece ?? []),
    }));
  });
}

/** One place on so many sheets: a piece that comes out even on them, else the first that is left, and so on. */
function takePieces(waiting: readonly PieceLeft[], sheets: number): readonly Run[] {
  const runs: Run[] = [];
  for (let end = 0; end < sheets; ) {
    const left = waiting.filter((each) => each.left > 0);
    const next = left.find((each) => each.left % (sheets - end) === 0) ?? left[0];
    if (!next) throw new Error('more places than pieces');
    const taken = Math.min(next.left, sheets - end);
    next.left -= taken;
    end += taken;
    runs.push({ piece: next.piece, end });
  }
  return runs;
}
