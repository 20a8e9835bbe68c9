import type { Edition } from '../../edition/editions.ts';
import type { Piece } from '../../project/model.ts';
import { closedFlat } from './closed-flat.ts';
import type { FlatThing } from './fit.ts';
import { closedThickness, gramsOf } from './thickness.ts';

/** A piece that lies flat once it is made, with all that lies on it and in it. */
export type Mailed = FlatThing & {
  readonly piece: Piece;
  readonly isFolded: boolean;
  /** Undefined when the weight of one of its papers is unknown. */
  readonly grams: number | undefined;
};

const CARDS: ReadonlySet<string> = new Set(['single-fold card', 'gate-fold card', 'accordion card']);
const ENVELOPE = 'envelope';

/** Whether a piece is one of the card forms. */
export function isCardForm(piece: Piece): boolean {
  return CARDS.has(formOf(piece));
}

export function isEnvelopeForm(piece: Piece): boolean {
  return formOf(piece) === ENVELOPE;
}

function formOf({ body }: Piece): string {
  return body.kind === 'form' ? body.form.value.trim().toLowerCase() : '';
}

/** A piece closed flat, `inside` lying in it; undefined when it cannot be made or does not close on a table. */
export function mailedPiece(edition: Edition, piece: Piece, inside: readonly Piece[]): Mailed | undefined {
  const net = edition.shapes.nets.get(piece.id.value);
  const closed = net && closedFlat(net);
  if (!net || !closed) return undefined;
  return {
    piece,
    isFolded: net.folds.length > 0,
    size: closed.size,
    thickness: closedThickness(edition, piece, closed, inside),
    grams: gramsOf(edition, [...stackOn(edition, piece), ...inside]),
  };
}

/** A piece and everything that lies on it, layer on layer. */
function stackOn({ shapes }: Edition, piece: Piece): readonly Piece[] {
  const stack = [piece];
  const ids = new Set([piece.id.value]);
  for (const layer of shapes.layers) {
    const base = layer.piece.on?.value.piece;
    if (base === undefined || !ids.has(base)) continue;
    ids.add(layer.piece.id.value);
    stack.push(layer.piece);
  }
  return stack;
}
