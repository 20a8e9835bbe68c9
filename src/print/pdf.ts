import { type ByteRange, PdfObjects } from './pdf-objects.ts';

/** An ISO 8601 calendar day, `2026-12-10`. */
const DAY = /^\d{4}-\d{2}-\d{2}$/u;

/** The two dates a PDF's information dictionary holds, as ISO 32000-1, 7.9.4 writes them. */
const DATES = /\/(CreationDate|ModDate) \(([^)]*)\)/gu;

/** The name of an element of the page's structure: a table's header cell, to which other cells refer. */
const NAME = /\/ID \(node(\d{8})\)/gu;

/** Wherever such a name stands: within other text a bracket has a backslash before it, and a text follows a key of its own. */
const NAMED = /(?<!\\|\/(?!ID )[A-Za-z]+ ?)\(node(\d{8})\)/gu;

/** The list of all names, sorted, with the element that each belongs to (ISO 32000-1, 7.9.6). */
const NAMES = /\/Limits \[[^\]]*\]\s*\/Names \[((?:\(node\d{8}\) \d+ 0 R ?)+)\]/gu;
const ENTRY = /(\(node\d{8}\)) \d+ 0 R/gu;

/** Bytes as text and back, one character a byte. */
const BYTES = 'latin1';

/** The stretch of a PDF that holds its information dictionary. */
function informationOf(text: string): ByteRange {
  const found = new PdfObjects(text).named('Info');
  if (!found) throw new Error('the browser wrote a PDF without an information dictionary');
  return found;
}

function pinned(day: string, length: number): string {
  const date = `D:${day.replaceAll('-', '')}000000+00'00'`;
  if (date.length !== length) throw new Error(`the browser wrote a date of ${length} characters`);
  return date;
}

/** Both dates are the first moment of `day` in UTC. */
function withDay(text: string, day: string): string {
  const { start, end } = informationOf(text);
  let found = 0;
  const information = text.slice(start, end).replace(DATES, (_, name: string, date: string) => {
    found += 1;
    return `/${name} (${pinned(day, date.length)})`;
  });
  if (found !== 2) throw new Error(`the browser wrote ${found} dates where a PDF has two`);
  return text.slice(0, start) + information + text.slice(end);
}

function sorted(all: string, list: string): string {
  const entries = [...list.matchAll(ENTRY)].map(([entry]) => entry).sort();
  const nameOf = (entry: string | undefined): string => entry?.slice(0, entry.indexOf(' ')) ?? '';
  const limits = `${nameOf(entries[0])} ${nameOf(entries.at(-1))}`;
  const again = all.replace(/\[[^\]]*\]/u, `[${limits}]`).replace(list, entries.join(' '));
  if (again.length !== all.length)
    throw new Error('the browser wrote a list of names that cannot be sorted in place');
  return again;
}

/**
 * Names are numbered as they come. The browser numbers them by all it has shown since it started, and not always in
 * one order.
 */
function withOwnNames(text: string): string {
  const numbers = new Set([...text.matchAll(NAME)].map(([, number = '']) => number));
  const names = new Map([...numbers].map((number, index) => [number, String(index + 1).padStart(8, '0')]));
  const renamed = text.replace(NAMED, (all, number: string) => {
    const name = names.get(number);
    return name === undefined ? all : `(node${name})`;
  });
  return renamed.replace(NAMES, sorted);
}

/**
 * A PDF as it would be had it been made on a fixed day by a browser just started: the same page then always gives the
 * same bytes. All that is replaced is replaced by as many characters, so that the file's table of offsets stays right.
 * @param day `2026-12-10`.
 * @throws RangeError when `day` is no ISO day.
 */
export function pin(pdf: Uint8Array, day: string): Uint8Array {
  if (!DAY.test(day)) throw new RangeError(`${day} is no ISO day such as 2026-12-10`);
  const text = Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength).toString(BYTES);
  return new Uint8Array(Buffer.from(withOwnNames(withDay(text, day)), BYTES));
}

/** How many pages a PDF of our printer has: as many as hang on the top of their tree (ISO 32000-1, 7.7.3.2). */
export function pageCount(pdf: Uint8Array): number {
  const text = Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength).toString(BYTES);
  const objects = new PdfObjects(text);
  const textOf = (stretch: ByteRange | undefined): string =>
    text.slice(stretch?.start ?? 0, stretch?.end ?? 0);
  const pages = textOf(objects.referred(textOf(objects.named('Root')), 'Pages'));
  const count = /\/Count (\d+)/u.exec(pages)?.[1];
  if (count === undefined) throw new Error('the browser wrote a PDF without a tree of pages');
  return Number(count);
}
