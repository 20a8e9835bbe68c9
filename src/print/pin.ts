/** An ISO 8601 calendar day, `2026-12-10`. */
const DAY = /^\d{4}-\d{2}-\d{2}$/u;

/** The two dates a PDF's information dictionary holds, as ISO 32000-1, 7.9.4 writes them. */
const DATES = /\/(CreationDate|ModDate) \(([^)]*)\)/gu;

/** Bytes as text and back, one character a byte. */
const BYTES = 'latin1';

/** The stretch of a PDF that holds its information dictionary, found by way of the trailer. */
function informationOf(text: string): { start: number; end: number } {
  const number = /\/Info (\d+) 0 R/u.exec(text.slice(text.lastIndexOf('trailer')))?.[1];
  const start = number === undefined ? -1 : text.indexOf(`\n${number} 0 obj`);
  const end = text.indexOf('endobj', start);
  if (start < 0 || end < 0) throw new Error('the browser wrote a PDF without an information dictionary');
  return { start, end };
}

function pinned(day: string, length: number): string {
  const date = `D:${day.replaceAll('-', '')}000000+00'00'`;
  if (date.length !== length) throw new Error(`the browser wrote a date of ${length} characters`);
  return date;
}

/**
 * Puts a day of ours in the place of the two dates that a browser takes from the clock, so that the same page gives the
 * same bytes. Each is replaced by as many characters, so that the file's table of offsets stays right.
 * @param day The first moment of this day in UTC: `2026-12-10`.
 * @throws RangeError when `day` is no ISO day.
 */
export function pinDates(pdf: Uint8Array, day: string): Uint8Array {
  if (!DAY.test(day)) throw new RangeError(`${day} is no ISO day such as 2026-12-10`);
  const text = Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength).toString(BYTES);
  const { start, end } = informationOf(text);
  let found = 0;
  const information = text.slice(start, end).replace(DATES, (_, name: string, date: string) => {
    found += 1;
    return `/${name} (${pinned(day, date.length)})`;
  });
  if (found !== 2) throw new Error(`the browser wrote ${found} dates where a PDF has two`);
  const bytes = Uint8Array.from(pdf);
  bytes.set(Buffer.from(information, BYTES), start);
  return bytes;
}
