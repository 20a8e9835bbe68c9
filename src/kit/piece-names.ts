import type { PieceKind } from './demand.ts';
import type { PlacedPiece } from './sheet-tree.ts';

/** For so many of a layout's sheets, which of the pieces of its kind each placed piece is. */
export type PieceNames = { readonly count: number; readonly names: readonly string[] };

/** So many sheets that give the same pieces, without their names. */
type AlikeSheets = { readonly count: number; readonly pieces: readonly PlacedPiece[] };

/** A name, and how many pieces are still to bear it. */
type NameLeft = { readonly name: string; left: number };

/** One place of a layout bears a name up to this one of its sheets. */
type Run = { readonly name: string; readonly end: number };

/**
 * Says which of the pieces of one size is which, so that exactly so many of each name are cut: place after place is
 * named, each on all sheets of its layout. Sheets of a layout differ only where a name comes to its end among them.
 * @returns for each layout the names of its pieces, in one way for all its sheets, or in several for some each.
 */
export function namePieces(
  layouts: readonly AlikeSheets[],
  kinds: readonly PieceKind[],
  kits: number,
): readonly (readonly PieceNames[])[] {
  const waiting = kinds.map(({ pieces }) =>
    pieces.map(({ name, perKit }): NameLeft => ({ name, left: perKit * kits })),
  );
  return layouts.map(({ count, pieces }) => {
    const places = pieces.map(({ blank }) => takeNames(waiting[blank] ?? [], count));
    const ends = [...new Set(places.flatMap((runs) => runs.map(({ end }) => end)))].sort((a, b) => a - b);
    return ends.map((end, index) => ({
      count: end - (ends[index - 1] ?? 0),
      names: places.map((runs) => runs.find((run) => run.end >= end)?.name ?? ''),
    }));
  });
}

/** Names one place on so many sheets: by a name that comes out even on them, else by the first there is, and so on. */
function takeNames(waiting: readonly NameLeft[], sheets: number): readonly Run[] {
  const runs: Run[] = [];
  for (let end = 0; end < sheets; ) {
    const left = waiting.filter((each) => each.left > 0);
    const next = left.find((each) => each.left % (sheets - end) === 0) ?? left[0];
    if (!next) throw new Error('more pieces than names');
    const taken = Math.min(next.left, sheets - end);
    next.left -= taken;
    end += taken;
    runs.push({ name: next.name, end });
  }
  return runs;
}
