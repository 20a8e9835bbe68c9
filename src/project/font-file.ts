import { inflateSync } from 'node:zlib';

/** Characters by their code points, the first and the last of each stretch, in rising order. */
export type Letters = readonly CharacterRange[];
type CharacterRange = readonly [first: number, last: number];

/** A font of the workspace: its path there and from the root of the disk, what tells it from any other, and its characters; none where it can't be read. */
export type Font = {
  readonly path: string;
  readonly file: string;
  readonly digest: string;
  readonly letters: Letters;
};

/** Finds a font by its path in the workspace, or says why there is none. */
export type ReadFont = (
  path: string,
) => Font | { readonly problem: 'missing' | 'outside' | 'no font' | 'too large' };

/** A table of a font: where its entry stands in the packed file, and its bytes. */
type FontTable = { readonly entry: Buffer; readonly data: Buffer };

const WOFF_HEAD = 44;
const WOFF_ENTRY = 20;
const FONT_HEAD = 12;
const FONT_ENTRY = 16;

/** No font unpacks to more; in bytes. */
const LARGEST_UNPACKED = 100_000_000;

/**
 * Unpacks a WOFF 1.0 file to the font it was made of (W3C Recommendation, 13 December 2012, sections 3 to 5).
 * @throws for what is none, and for one that unpacks to more than any font.
 */
export function fontOfWoff(woff: Buffer): Buffer {
  const count = woff.readUInt16BE(12);
  const sizes = Array.from({ length: count }, (_, index) =>
    woff.readUInt32BE(WOFF_HEAD + index * WOFF_ENTRY + 12),
  );
  if (sizes.reduce((sum, size) => sum + size, 0) > LARGEST_UNPACKED)
    throw new RangeError('no font is so large');
  const tables = Array.from({ length: count }, (_, index) => tableOf(woff, WOFF_HEAD + index * WOFF_ENTRY));
  const head = Buffer.alloc(FONT_HEAD + count * FONT_ENTRY);
  const exponent = Math.floor(Math.log2(count));
  woff.copy(head, 0, 4, 8);
  head.writeUInt16BE(count, 4);
  head.writeUInt16BE(2 ** exponent * FONT_ENTRY, 6);
  head.writeUInt16BE(exponent, 8);
  head.writeUInt16BE((count - 2 ** exponent) * FONT_ENTRY, 10);
  let end = head.length;
  const bodies = tables.map(({ entry, data }, index) => {
    const at = FONT_HEAD + index * FONT_ENTRY;
    entry.copy(head, at, 0, 4);
    entry.copy(head, at + 4, 16, 20);
    head.writeUInt32BE(end, at + 8);
    head.writeUInt32BE(data.length, at + 12);
    const body = Buffer.concat([data, Buffer.alloc(-data.length & 3)]);
    end += body.length;
    return body;
  });
  return Buffer.concat([head, ...bodies]);
}

function tableOf(woff: Buffer, at: number): FontTable {
  const entry = woff.subarray(at, at + WOFF_ENTRY);
  const [offset, packed, size] = [entry.readUInt32BE(4), entry.readUInt32BE(8), entry.readUInt32BE(12)];
  const data = woff.subarray(offset, offset + packed);
  return { entry, data: packed < size ? inflateSync(data, { maxOutputLength: size }) : data };
}

/** As CSS calls the kinds of font that we read, by the first four bytes; TrueType also as Apple marks it. */
const FORMATS: Readonly<Partial<Record<number, FontFormat>>> = {
  65536: 'truetype',
  1953658213: 'truetype',
  1330926671: 'opentype',
  2001684038: 'woff',
};
export type FontFormat = 'truetype' | 'opentype' | 'woff';

/** What a font is, whatever its file is called. Undefined where it is none, or of another kind. */
export function formatOfFont(bytes: Uint8Array): FontFormat | undefined {
  return bytes.length < 4 ? undefined : FORMATS[Buffer.from(bytes.subarray(0, 4)).readUInt32BE()];
}

/** A font as one file, unpacked if it is a WOFF 1.0. Undefined where it is none, or of another kind. */
export function unpackFont(bytes: Buffer): Buffer | undefined {
  try {
    const font = formatOfFont(bytes) === 'woff' ? fontOfWoff(bytes) : bytes;
    const format = formatOfFont(font);
    return format && format !== 'woff' ? font : undefined;
  } catch {
    return undefined;
  }
}

/**
 * The characters an unpacked font has shapes for, by its `cmap` table (OpenType 1.9.1, formats 4 and 12). Undefined
 * where that cannot be read.
 */
export function lettersOf(font: Buffer): Letters | undefined {
  try {
    const table = cmapOf(font);
    const format = table?.readUInt16BE(0);
    if (!table || !(format === 4 || format === 12)) return undefined;
    const letters = joined(format === 12 ? inGroups(table) : inSegments(table));
    return letters.length > MOST_STRETCHES ? undefined : letters;
  } catch {
    return undefined;
  }
}

/** A font with every other character of Unicode's first plane has more; none that people write with comes near. */
const MOST_STRETCHES = 20_000;

/**
 * An unpacked font under another family name, its only name (OpenType 1.9.1, `name` table, version 0, name ID 1 in American
 * English on Windows). Undefined where it has no table of names.
 */
export function renameFont(font: Buffer, family: string): Buffer | undefined {
  const entry = entryOf(font, 'name');
  if (entry === undefined) return undefined;
  const record = [1, 18, 3, 1, 0x409, 1, 2 * family.length, 0];
  const head = Buffer.alloc(2 + 2 * record.length);
  for (const [index, value] of record.entries()) head.writeUInt16BE(value, 2 + 2 * index);
  const table = Buffer.concat([head, Buffer.from(family, 'utf16le').swap16()]);
  const filler = Buffer.alloc(-font.length & 3);
  const renamed = Buffer.concat([font, filler, table]);
  renamed.writeUInt32BE(font.length + filler.length, entry + 8);
  renamed.writeUInt32BE(table.length, entry + 12);
  return renamed;
}

/** A table of an unpacked font, and all behind it. */
function bodyOf(font: Buffer, tag: string): Buffer | undefined {
  const entry = entryOf(font, tag);
  return entry === undefined ? undefined : font.subarray(font.readUInt32BE(entry + 8));
}

/** Where an unpacked font notes the place of a table, in bytes. */
function entryOf(font: Buffer, tag: string): number | undefined {
  const entries = Array.from({ length: font.readUInt16BE(4) }, (_, index) => FONT_HEAD + index * FONT_ENTRY);
  return entries.find((at) => font.toString('latin1', at, at + 4) === tag);
}

/** The widest of the subtables that are for Unicode. */
function cmapOf(font: Buffer): Buffer | undefined {
  const cmap = bodyOf(font, 'cmap');
  if (!cmap) return undefined;
  const subtables = Array.from({ length: cmap.readUInt16BE(2) }, (_, index) => 4 + index * 8).flatMap(
    (at) => {
      const [platform, encoding] = [cmap.readUInt16BE(at), cmap.readUInt16BE(at + 2)];
      const isUnicode = platform === 0 || (platform === 3 && (encoding === 1 || encoding === 10));
      return isUnicode ? [cmap.subarray(cmap.readUInt32BE(at + 4))] : [];
    },
  );
  return [12, 4].flatMap((format) => subtables.filter((each) => each.readUInt16BE(0) === format))[0];
}

const LAST_CODE_POINT = 0x10ffff;

/** Stretches as they stand in the table, which has them in rising order: of one that goes back, what was not told yet. */
function* inGroups(table: Buffer): Iterable<CharacterRange> {
  let told = -1;
  for (let index = 0; index < table.readUInt32BE(12); index++) {
    const at = 16 + index * 12;
    const last = Math.min(table.readUInt32BE(at + 4), LAST_CODE_POINT);
    const first = Math.max(table.readUInt32BE(at), told + 1);
    if (first > last) continue;
    yield [first, last];
    told = last;
  }
}

/** The same; a segment gives its glyphs by adding, or by a list that may have none for a character. */
function* inSegments(table: Buffer): Iterable<CharacterRange> {
  const size = table.readUInt16BE(6);
  let told = -1;
  for (let at = 14; at < 14 + size; at += 2) {
    const last = table.readUInt16BE(at);
    const first = table.readUInt16BE(at + size + 2);
    const delta = table.readUInt16BE(at + 2 * size + 2);
    const list = at + 3 * size + 2;
    const offset = table.readUInt16BE(list);
    for (let code = Math.max(first, told + 1); code <= last && code < 0xffff; code++) {
      const glyph = offset === 0 ? code + delta : table.readUInt16BE(list + offset + 2 * (code - first));
      if ((glyph & 0xffff) !== 0) yield [code, code];
    }
    told = Math.max(told, last);
  }
}

/** Those that touch, as one. */
function joined(stretches: Iterable<CharacterRange>): Letters {
  const found: [number, number][] = [];
  for (const [first, last] of stretches) {
    const before = found.at(-1);
    if (before && first === before[1] + 1) before[1] = last;
    else found.push([first, last]);
  }
  return found;
}
