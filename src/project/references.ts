import type { Fault } from './fault.ts';
import type { Piece, Project } from './model.ts';
import type { At } from './source.ts';

type Referring = Pick<Project, 'pieces' | 'names' | 'introduction' | 'steps'>;

/**
 * Reports every name of a piece or a stock that is not there: in `stock:`, in `on:` and in the prose. Whether a piece
 * has the panel that is named is for its shape to say. A name that was written but could not be read is no fault here.
 */
export function checkReferences(project: Referring, report: (fault: Fault) => void): void {
  const { pieces, stock } = project.names;
  const check = (what: string, name: At<string>, among: readonly string[]): void => {
    if (among.includes(name.value)) return;
    report({ kind: 'unknown-reference', what, name: name.value, among, at: name.at });
  };
  for (const piece of project.pieces.values()) {
    if (piece.stock) check('stock', piece.stock, stock);
    const base = basePiece(piece);
    if (base) check('piece', base, pieces);
  }
  for (const { references } of [project.introduction, ...project.steps.map(({ prose }) => prose)]) {
    for (const { name } of references)
      if (!pieces.includes(name.value)) check('piece', pieceOf(name), pieces);
  }
}

function basePiece({ on }: Piece): At<string> | undefined {
  return on && { value: on.value.piece, at: { ...on.at, end: on.at.start + on.value.piece.length } };
}

/** `box` of `box.front`, with its own place. */
function pieceOf({ value, at }: At<string>): At<string> {
  const [piece = ''] = value.split('.');
  return { value: piece, at: { ...at, end: at.start + piece.length } };
}
