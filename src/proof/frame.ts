import { lineAt, type Place } from '../project/source.ts';

/** A source line, and a line of carets that stands under the place when both are printed one under the other. */
type Frame = { readonly source: string; readonly carets: string };

/** A longer line is cut round the place. */
const WIDEST = 100;
/** How much of a cut line stays to be seen before the place. */
const LEAD = 40;

/** The (first) line of a place. Tabs stay tabs in both lines, so that the carets stand right whatever a tab's width. */
export function frameOf({ file: { text }, start, end }: Place): Frame {
  const { start: lineStart, end: lineEnd } = lineAt(text, start);
  const line = text.slice(lineStart, lineEnd).replace(/\r?\n?$/u, '');
  const { length } = line;
  const from = Math.min(start - lineStart, length);
  const to = Math.max(Math.min(end - lineStart, length), from + 1);
  const left = length <= WIDEST ? 0 : Math.max(0, Math.min(from - LEAD, length - WIDEST));
  const right = Math.min(length, left + WIDEST);
  const before = cutMark(left > 0) + line.slice(left, from);
  const blamed = line.slice(from, Math.min(to, right));
  const after = line.slice(Math.min(to, right), right) + cutMark(right < length);
  return {
    source: printable(before + blamed + after),
    carets: before.replace(/[^\t]/gu, ' ') + '^'.repeat(Math.max(1, [...blamed].length)),
  };
}

function cutMark(isCut: boolean): string {
  return isCut ? '…' : '';
}

/** Without the control characters (tabs apart) by which a text could take hold of a terminal. */
export function printable(text: string): string {
  return text.replace(/(?!\t)[\p{Cc}\u202A-\u202E\u2066-\u2069]/gu, '�');
}
