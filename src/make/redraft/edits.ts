import type { Length, Unit } from '../../measure/length.ts';
import { unitOf } from '../../measure/notation.ts';
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

/**
 * What several variants want to stand in one sheet, each said once; undefined where two want different things in one
 * place.
 */
export function joinEdits(wanted: readonly (readonly Edit[])[]): readonly Edit[] | undefined {
  const joined = new Map<string, Edit>();
  for (const edit of wanted.flat()) {
    // What is added says its key first, and several keys may be added in one place.
    const key = `${edit.start} ${edit.end} ${edit.start === edit.end ? edit.text.replace(/:.*/su, '') : ''}`;
    const other = joined.get(key);
    if (other && other.text !== edit.text) return undefined;
    joined.set(key, edit);
  }
  return [...joined.values()];
}

/**
 * What is to stand wherever a length of a piece does, changed or not: its number in place, or, where it became another,
 * beside what it takes from a shared file.
 */
export function pieceEdits({ file, unit }: Project, old: Piece, now: Piece): readonly Edit[] {
  return writtenIn(now.body).flatMap(({ key, lengths, unit: own = unit }, index): readonly Edit[] => {
    const before = writtenIn(old.body)[index]?.lengths ?? [];
    const isHere = before[0]?.at.file === file;
    if (isHere) return lengths.flatMap((length, place) => renumber(before[place], length.value, own));
    if (lengths.every(({ value }, place) => before[place]?.value.equals(value))) return [];
    return [addBeside(old.at, key, lengths.map((length) => sayNumber(length.value, unit)).join(' x '))];
  });
}

/** Lengths that are written together, and their key. */
type LengthsWritten = { readonly key: string; readonly lengths: readonly At<Length>[]; readonly unit?: Unit };

/** Every length of a body where it stands, those written together as one. */
function writtenIn(body: PieceBody): readonly LengthsWritten[] {
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

/** A number where it stands, its unit after it kept; as it is typed where it stays. */
export function renumber(old: At<Length> | undefined, length: Length, unit: Unit): readonly Edit[] {
  if (!old) return [];
  const { start, end } = old.at;
  if (old.value.equals(length)) return [{ start, end, text: textAt(old.at) }];
  const [, blank = '', suffix = ''] = /(\s*)([\p{L}"″”']+\.?)$/iu.exec(textAt(old.at)) ?? [];
  const own = suffix === '' ? unit : (unitOf(suffix) ?? unit);
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

/** What became of a piece: `front: 3 1/4 × 4 1/2, now 4 × 5 in`; of a form each of its lengths that is another. */
export function tellChange(old: Piece, now: Piece, { unit }: Project): string {
  const say = ({ lengths }: LengthsWritten): string =>
    lengths.map(({ value }) => sayNumber(value, unit)).join(' × ');
  const told = writtenIn(now.body).flatMap((each, index) => {
    const was = writtenIn(old.body)[index];
    if (!was || each.key === 'score' || say(was) === say(each)) return [];
    return [`${each.key === 'cut' ? '' : `${each.key} `}${say(was)}, now ${say(each)} ${unit}`];
  });
  return `${old.id.value}: ${told.join('; ')}`;
}
