import type { At } from './source.ts';

/** A side of the paper: the outside faces you as a sheet is drawn, the inside is seen when it is turned over like a page. */
export type Face = 'outside' | 'inside';

/**
 * A piece (`front`), or a part of one: a panel (`box.front`), a further sheet (`box.lid`), an opening (`card.window`);
 * and the face of it. What is behind something is on its inner face: the back of a flat piece.
 */
export type Ref = { readonly piece: string; readonly part?: string; readonly face: Face | 'behind' };

/** A piece, or a part of it, whichever face of the paper is meant. */
export type Named = { readonly piece: string; readonly part?: string | undefined };

/** How a reference is written. */
export const REF: RegExp = /^(?:(inside|behind)\s+)?([^.\s](?:[^.]*[^.\s])?)(?:\.(.+))?$/u;

/** What a person writes, `inside card.front`, taken apart. */
export function readRef(text: string): Ref {
  const [, face, piece = text, part] = REF.exec(text) ?? [];
  return {
    piece,
    ...(part !== undefined && { part }),
    face: face === 'inside' || face === 'behind' ? face : 'outside',
  };
}

/** The name of the piece in a reference, which stands before its part, with its own place. */
export function pieceIn({ value: { piece, part }, at }: At<Ref>): At<string> {
  const end = at.end - (part === undefined ? 0 : part.length + '.'.length);
  return { value: piece, at: { ...at, start: end - piece.length, end } };
}

/** The name of the part, which stands last, with its own place; none where a whole piece is named. */
export function partIn({ value: { part }, at }: At<Ref>): At<string> | undefined {
  return part === undefined ? undefined : { value: part, at: { ...at, start: at.end - part.length } };
}

/** A reference put together again. */
export function writeRef(ref: Ref): string {
  return ref.face === 'outside' ? writeName(ref) : `${ref.face} ${writeName(ref)}`;
}

/** The same without its face: `card.front`. */
export function writeName({ piece, part }: Named): string {
  return part === undefined ? piece : `${piece}.${part}`;
}

/** The side of the paper that it is on. */
export function faceOf({ face }: Ref): Face {
  return face === 'outside' ? face : 'inside';
}

/** Whether two name the same face of the same paper. */
export function isSameRef(one: Ref, other: Ref): boolean {
  return one.piece === other.piece && one.part === other.part && faceOf(one) === faceOf(other);
}
