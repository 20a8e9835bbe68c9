import type { Cell } from '../project/net-as-written.ts';

const LETTERS = 26;

/** `B3` of column 1, row 2; columns beyond Z go on with AA, AB. */
export function cellName({ column, row }: Cell): string {
  return `${columnName(column)}${row + 1}`;
}

/** `A` of 0, `Z` of 25, `AA` of 26. */
export function columnName(column: number): string {
  const last = String.fromCodePoint(65 + (column % LETTERS));
  return column < LETTERS ? last : columnName(Math.floor(column / LETTERS) - 1) + last;
}

/** The cell a text like `B3` or `aa12` names, wherever it lies; undefined when it is no cell's name. */
export function parseCell(text: string): Cell | undefined {
  const match = /^([a-z]{1,2})([1-9]\d{0,2})$/iu.exec(text.trim());
  const [, letters, digits] = match ?? [];
  if (letters === undefined || digits === undefined) return undefined;
  let column = 0;
  for (const letter of letters.toUpperCase()) column = column * LETTERS + (letter.codePointAt(0) ?? 0) - 64;
  return { column: column - 1, row: Number(digits) - 1 };
}

/** The same with the part of it that an angled line leaves, as `patchName` writes it: `C2 left`. */
export function parsePatch(text: string): string | undefined {
  const [, name = '', part] = /^(.*?)(?:\s+(left|middle|right))?$/iu.exec(text.trim()) ?? [];
  const cell = parseCell(name);
  return cell && (part ? `${cellName(cell)} ${part.toLowerCase()}` : cellName(cell));
}
