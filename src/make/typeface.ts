import { rmSync } from 'node:fs';
import { mkdtemp, readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { onExit } from 'signal-exit';
import { realSurroundings } from '../print/surroundings.ts';
import { cacheFolder } from '../recall/cache-folder.ts';
import { sha256 } from '../recall/sealed.ts';
import { putFiles } from './files.ts';

export type FontWeight = 400 | 700;

/** The subset that is asked for letters comes first; the other has those that it lacks. */
const SUBSETS = ['latin', 'latin-ext'];

const unpacked = new Map<FontWeight, Promise<readonly string[]>>();

/** The files of the typeface as a program that draws pictures reads them: unpacked once, into our cache folder. */
export function typefaceFiles(weight: FontWeight): Promise<readonly string[]> {
  const files = unpacked.get(weight) ?? Promise.all(SUBSETS.map((subset) => unpack(subset, weight)));
  unpacked.set(weight, files);
  return files;
}

/** A file of the cache; elsewhere, until the program ends, where the cache is closed to us. */
async function unpack(subset: string, weight: FontWeight): Promise<string> {
  const require = createRequire(import.meta.url);
  const name = `public-sans-${subset}-${weight}-normal`;
  const bytes = fontOfWoff(await readFile(require.resolve(`@fontsource/public-sans/files/${name}.woff`)));
  const file = { path: `${name}-${sha256(bytes).slice(0, 10)}.ttf`, bytes };
  let folder = join(cacheFolder(realSurroundings()), 'typeface');
  try {
    await putFiles(folder, [file]);
  } catch {
    folder = await mkdtemp(join(tmpdir(), 'sheetwright-type-'));
    onExit(() => rmSync(folder, { recursive: true, force: true }));
    await putFiles(folder, [file]);
  }
  return join(folder, file.path);
}

/** A table of a font: where its entry stands in the packed file, and its bytes. */
type FontTable = { readonly entry: Buffer; readonly data: Buffer };

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

function tableOf(woff: Buffer, at: number): FontTable {
  const entry = woff.subarray(at, at + WOFF_ENTRY);
  const [offset, packed, size] = [entry.readUInt32BE(4), entry.readUInt32BE(8), entry.readUInt32BE(12)];
  const data = woff.subarray(offset, offset + packed);
  return { entry, data: packed < size ? inflateSync(data) : data };
}
