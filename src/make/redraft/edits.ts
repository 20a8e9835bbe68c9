import type { Length, Unit } from '../../measure/length.ts';
import type { Piece, PieceBody, Project } from '../../project/model.ts';
import { type At, type Place, textAt } from '../../project/source.ts';

/** A stretch of the sheet, and what is to stand there instead. */
export type Edit = { readonly start: number; readonly end: number; readonly text: string };

/** A text with some stretches of it replaced; those that come first in the list stand first where they meet. */
export function applyEdits(text: string, edits: readonly Edit[]): string {
  const [result, end] = edits
    .toSorted((a, b) => a.start - b.start)
    .reduce<readonly [string, number]>(
      ([done, upTo], edit) => [`${done}${text.slice(upTo, edit.start)}${edit.text}`, edit.end],
      ['', 0],
    );
  return result + text.slice(end);
}

/** What of a piece is to be written otherwise: its numbers in place, or beside what it takes from a shared file. */
export function pieceEdits({ file, unit }: Project, old: Piece, now: Piece): readonly Edit[] {
  const changed = writtenIn(now.body).flatMap(({ key, lengths, unit: own = unit }, index) => {
    const before = writtenIn(old.body)[index]?.lengths ?? [];
    const isSame = lengths.every(({ value }, place) => before[place]?.value.equals(value));
    return isSame ? [] : [{ key, lengths, before, own }];
  });
  return changed.flatMap(({ key, lengths, before, own }): readonly Edit[] => {
    const [first] = before;
    if (first?.at.file === file) {
      return lengths.flatMap((length, place) => renumber(before[place], length.value, own));
    }
    const value = lengths.map((length) => sayNumber(length.value, unit)).join(' x ');
    return [addBeside(old.at, key, value)];
  });
}

/** Lengths that are written together, and their key. */
type LengthsWritten = { readonly key: string; readonly lengths: readonly At<Length>[]; readonly unit?: Unit };

/** Every length of a body where it stands, those written together as one. */
export function writtenIn(body: PieceBody): readonly LengthsWritten[] {
  if (body.kind === 'form') {
    return [...body.settings].flatMap(([key, setting]) =>
      setting.kind === 'lengths'
        ? [{ key, lengths: setting.lengths, ...(setting.unit && { unit: setting.unit }) }]
        : [],
    );
  }
  const { width, height, unit } = body.cut;
  const cut = { key: 'cut', lengths: [width, height], ...(unit && { unit }) };
  return body.kind === 'flat' ? [cut] : [cut, ...body.score.map(({ at }) => ({ key: 'score', lengths: at }))];
}

/** A number where it stands, its unit behind it kept. */
export function renumber(old: At<Length> | undefined, length: Length, unit: Unit): readonly Edit[] {
  if (!old || old.value.equals(length)) return [];
  const { start, end } = old.at;
  const [, blank = '', suffix = ''] = /(\s*)([a-z"″”']+\.?)$/iu.exec(textAt(old.at)) ?? [];
  const own = /^mm/iu.test(suffix) ? 'mm' : /^cm/iu.test(suffix) ? 'cm' : suffix ? 'in' : unit;
  return [{ start, end, text: `${sayNumber(length, own)}${blank}${suffix}` }];
}

/** A number as it is typed: `4 1/4`, `82.5`; a fraction where no decimal would be exact. */
export function sayNumber(length: Length, unit: Unit): string {
  const { numerator, denominator } = length.in(unit);
  if (unit === 'in' && denominator <= 64n) {
    const [whole, rest] = [numerator / denominator, numerator % denominator];
    if (rest === 0n) return `${whole}`;
    return whole === 0n ? `${rest}/${denominator}` : `${whole} ${rest}/${denominator}`;
  }
  if (10_000n % denominator === 0n) return `${Number(numerator) / Number(denominator)}`;
  return `${numerator}/${denominator}`;
}

/** Another key in a map: within its braces, else on a line of its own before its first. */
export function addBeside({ file, start, end }: Place, key: string, value: string): Edit {
  const { text } = file;
  if (text.startsWith('{', start)) {
    const close = text.slice(start, end).trimEnd().length + start - 1;
    const before = text.slice(start, close).trimEnd().length + start;
    return { start: before, end: before, text: `, ${key}: ${value}` };
  }
  const indent = /[^\n]*$/u.exec(text.slice(0, start))?.[0] ?? '';
  return { start, end: start, text: `${key}: ${value}\n${indent.replace(/\S/gu, ' ')}` };
}
