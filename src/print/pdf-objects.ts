/** A stretch of a PDF's text, one character a byte. */
export type ByteRange = { readonly start: number; readonly end: number };

/** The table of offsets, one row of twenty bytes an object (ISO 32000-1, 7.5.4). */
const TABLE = /xref\s+0 (\d+)\s*?\r?\n/uy;
const ROW = 20;

/**
 * Where the objects of a PDF of our printer stand, by the table at its end (ISO 32000-1, 7.5.5). What a title says, were
 * it `endobj`, is never taken for structure.
 */
export class PdfObjects {
  readonly #text: string;
  readonly #offsets: readonly number[];
  readonly #sorted: readonly number[];
  readonly #trailer: string;

  /** @throws when the file has no such table. */
  constructor(text: string) {
    const last = text.lastIndexOf('startxref');
    const start = Number(/startxref\s+(\d+)/u.exec(text.slice(last))?.[1] ?? text.length);
    TABLE.lastIndex = start;
    const count = last < 0 ? undefined : TABLE.exec(text)?.[1];
    if (count === undefined) throw new Error('the browser wrote a PDF without a table of its objects');
    const rows = TABLE.lastIndex;
    this.#text = text;
    this.#offsets = Array.from({ length: Number(count) }, (_, row) =>
      Number(text.slice(rows + row * ROW, rows + row * ROW + 10)),
    );
    this.#sorted = [...this.#offsets, start].sort((a, b) => a - b);
    this.#trailer = text.slice(rows + Number(count) * ROW, last);
  }

  /** The object that a key of the trailer leads to; `Info` holds the dates, `Root` the pages. */
  named(key: 'Info' | 'Root'): ByteRange | undefined {
    return this.referred(this.#trailer, key);
  }

  /** The object that a key of a dictionary leads to. */
  referred(dictionary: string, key: string): ByteRange | undefined {
    const number = new RegExp(`/${key} (\\d+) 0 R`, 'u').exec(dictionary)?.[1];
    const start = number === undefined ? undefined : this.#offsets[Number(number)];
    if (start === undefined || !this.#text.startsWith(`${number} 0 obj`, start)) return undefined;
    return { start, end: this.#sorted.find((offset) => offset > start) ?? start };
  }
}
