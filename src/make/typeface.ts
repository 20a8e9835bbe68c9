import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { ownFolder } from '../print/find-browser.ts';
import { realSurroundings } from '../print/surroundings.ts';
import { sha256 } from './files.ts';

export type FontWeight = 400 | 700;

/** The subset that is asked for letters comes first; the other has those that it lacks. */
const SUBSETS = ['latin', 'latin-ext'];

const unpacked = new Map<FontWeight, readonly string[]>();

/** The files of the typeface as a program that draws pictures reads them: unpacked once, into our cache folder. */
export function typefaceFiles(weight: FontWeight): readonly string[] {
  const known = unpacked.get(weight);
  if (known) return known;
  const require = createRequire(import.meta.url);
  const files = SUBSETS.map((subset) => {
    const name = `public-sans-${subset}-${weight}-normal`;
    const woff = readFileSync(require.resolve(`@fontsource/public-sans/files/${name}.woff`));
    return inCache(`${name}-${sha256(woff).slice(0, 10)}.ttf`, () => fontOfWoff(woff));
  });
  unpacked.set(weight, files);
  return files;
}

/** A file of the cache, made where it is not there yet; elsewhere, until the program ends, where the cache is closed to us. */
function inCache(name: string, bytes: () => Buffer): string {
  const folder = join(ownFolder(realSurroundings()), 'typeface');
  const path = join(folder, name);
  if (existsSync(path)) return path;
  try {
    mkdirSync(folder, { recursive: true });
    // Whole or not at all: another program may be looking.
    const part = `${path}.${randomBytes(4).toString('hex')}`;
    writeFileSync(part, bytes());
    renameSync(part, path);
    return path;
  } catch {
    const passing = mkdtempSync(join(tmpdir(), 'sheetwright-type-'));
    process.once('exit', () => rmSync(passing, { recursive: true, force: true }));
    writeFileSync(join(passing, name), bytes());
    return join(passing, name);
  }
}

/** A table of a font: where its entry stands in the packed file, and its bytes. */
type Table = { readonly entry: Buffer; readonly data: Buffer };

const WOFF_HEAD = 44;
const WOFF_ENTRY = 20;
const FONT_HEAD = 12;
const FONT_ENTRY = 16;

/** Unpacks a WOFF 1.0 file to the font it was made of (W3C Recommendation, 13 December 2012, sections 3 to 5). */
function fontOfWoff(woff: Buffer): Buffer {
  const count = woff.readUInt16BE(12);
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

function tableOf(woff: Buffer, at: number): Table {
  const entry = woff.subarray(at, at + WOFF_ENTRY);
  const [offset, packed, size] = [entry.readUInt32BE(4), entry.readUInt32BE(8), entry.readUInt32BE(12)];
  const data = woff.subarray(offset, offset + packed);
  return { entry, data: packed < size ? inflateSync(data) : data };
}
