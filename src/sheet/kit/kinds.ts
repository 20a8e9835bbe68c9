import type { PieceKind } from '../../kit/plan.ts';
import { nameOf } from '../names.ts';
import type { Voice } from '../voice.ts';

/** A piece as a person says it: `box: lid` for the lid's sheet of a box. */
export function pieceName(name: string): string {
  const [piece = '', ...sheet] = name.split('.');
  return sheet.length === 0 ? nameOf(piece) : `${nameOf(piece)}: ${nameOf(sheet.join('.'))}`;
}

/** The pieces that are cut alike: `front or back`. */
export function kindName({ pieces }: PieceKind, { language }: Voice): string {
  const names = pieces.map(({ name }) => pieceName(name));
  return new Intl.ListFormat(language, { type: 'disjunction' }).format(names);
}

/** `A` for the first kind of a stock; after `Z` comes `AA`. */
export function kindLetter(kind: number): string {
  const last = String.fromCharCode(65 + (kind % 26));
  return kind < 26 ? last : `${kindLetter(Math.floor(kind / 26) - 1)}${last}`;
}
