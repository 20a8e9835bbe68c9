import type { Finding } from './finding.ts';
import type { Project, Prose } from './model.ts';
import type { WrittenPiece } from './read-pieces.ts';
import type { At } from './source.ts';

/** The names there are, those of `shared/` included, and the names written where one of them belongs. */
type NamesWritten = {
  readonly names: Project['names'];
  readonly sharedStock: readonly string[];
  readonly pieces: readonly WrittenPiece[];
  readonly prose: readonly Prose[];
};

/**
 * Reports every name of a piece or a stock that is not there: in `stock:`, in `on:` and in the prose. Whether a piece
 * has the panel that is named is for its shape to say. A name that was written but could not be read is no fault here.
 */
export function checkReferences(
  { names, sharedStock, pieces, prose }: NamesWritten,
  report: (finding: Finding) => void,
): void {
  const stock = new Set([...names.stock, ...sharedStock]);
  const check = (what: string, name: At<string>, known: readonly string[], among = known): void => {
    if (known.includes(name.value)) return;
    report({ rule: 'unknown-reference', at: name.at, facts: { what, name: name.value, among } });
  };
  for (const piece of pieces) {
    if (piece.stock) check('stock', piece.stock, names.stock, [...stock]);
    const base = piece.on && pieceOf({ value: piece.on.value.piece, at: piece.on.at });
    if (base) check('piece', base, names.pieces);
  }
  for (const { name } of prose.flatMap(({ references }) => references)) {
    if (!names.pieces.includes(name.value)) check('piece', pieceOf(name), names.pieces);
  }
}

/** `box` of `box.front`, with its own place. */
function pieceOf({ value, at }: At<string>): At<string> {
  const [piece = ''] = value.split('.');
  return { value: piece, at: { ...at, end: at.start + piece.length } };
}
