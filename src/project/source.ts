import { hash } from 'node:crypto';

/** A text a person wrote, and the path it is named by in messages (relative to where the command runs). */
export type SourceFile = { readonly path: string; readonly text: string };

/** A stretch of a source file, in UTF-16 offsets into the whole file; `end` is exclusive. */
export type Place = { readonly file: SourceFile; readonly start: number; readonly end: number };

/** A value together with the very characters it was read from. */
export type At<T> = { readonly value: T; readonly at: Place };

/** A point in a text as people count: the first line and the first column are 1. */
type LineColumn = { readonly line: number; readonly column: number };

/** TextLine and column of an offset. The only place where offsets become lines. */
export function pointAt(text: string, offset: number): LineColumn {
  const within = Math.min(offset, text.length);
  const { number, start } = lineAt(text, within);
  return { line: number, column: within - start + 1 };
}

/** A line as people count, and its offsets; `end` is that of the next line. */
type TextLine = { readonly number: number; readonly start: number; readonly end: number };

/** The line round an offset. */
export function lineAt(text: string, offset: number): TextLine {
  const starts = lineStarts(text);
  const line = indexUpTo(offset, starts.length, (index) => starts[index] ?? 0);
  return { number: line + 1, start: starts[line] ?? 0, end: starts[line + 1] ?? text.length };
}

/** The last of some numbers, each larger than the one before, that is no larger than another: its index; 0 if none is. */
export function indexUpTo(limit: number, count: number, at: (index: number) => number): number {
  let [found, after] = [0, count];
  while (after - found > 1) {
    const middle = (found + after) >> 1;
    if (at(middle) <= limit) found = middle;
    else after = middle;
  }
  return found;
}

/** Of the text asked for last: a sheet may have thousands of findings, which are told one after the other. */
let latest: { readonly text: string; readonly starts: readonly number[] } | undefined;

function lineStarts(text: string): readonly number[] {
  if (latest?.text !== text) {
    const ends = [...text.matchAll(/\r\n|\r|\n/gu)];
    latest = { text, starts: [0, ...ends.map((end) => end.index + end[0].length)] };
  }
  return latest.starts;
}

/** A file's text as read, without its byte order mark; a lone carriage return ends a line like any other. */
export function sourceFile(path: string, text: string): SourceFile {
  return { path, text: text.replace(/^\uFEFF/u, '').replace(/\r(?!\n)/gu, '\n') };
}

/** A place of no width at the beginning of a file, for what has no characters of its own. */
export function startOf(file: SourceFile): Place {
  return { file, start: 0, end: 0 };
}

/** Whether a place stands for a file as a whole, as `startOf` makes it: it is named without a line. */
export function isWholeFile({ end }: Place): boolean {
  return end === 0;
}

/** The characters a place covers. */
export function textAt({ file, start, end }: Place): string {
  return file.text.slice(start, end);
}

/** A short text that is the same for the same texts in the same order, and for no others. */
export function digestOf(texts: readonly string[]): string {
  return hash('sha256', JSON.stringify(texts), 'base64url');
}

/** The order in which two things of one file are written. */
export function byPlace(a: { readonly at: Place }, b: { readonly at: Place }): number {
  return a.at.start - b.at.start;
}
