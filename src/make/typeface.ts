import { rmSync } from 'node:fs';
import { mkdtemp, readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onExit } from 'signal-exit';
import { realSurroundings } from '../print/surroundings.ts';
import { type Font, fontOfWoff, renameFont, unpackFont } from '../project/font-file.ts';
import { cacheFolder } from '../recall/cache-folder.ts';
import { sha256 } from '../recall/sealed.ts';
import { putFiles } from './files.ts';

/** The family of the font that a workspace names, as pages call it: what comes after our typeface. */
export const NAMED_FAMILY = 'Named by the workspace';

export type FontWeight = 400 | 700;

/** A font in a file, and its family unless it has no name. */
export type NamedFont = { readonly file: string; readonly family?: string };

/** The subset that is asked for letters comes first; the other has those that it lacks. */
const SUBSETS = ['latin', 'latin-ext'];

const unpacked = new Map<FontWeight, Promise<readonly string[]>>();

/** The files of the typeface as a program that draws pictures reads them: unpacked once, into our cache folder. */
export function typefaceFiles(weight: FontWeight): Promise<readonly string[]> {
  const files = unpacked.get(weight) ?? Promise.all(SUBSETS.map((subset) => unpack(subset, weight)));
  unpacked.set(weight, files);
  return files;
}

const renamed = new Map<string, Promise<NamedFont>>();

/** The font that a workspace names, the same way, under a family name that no other font has. */
export function namedFont({ file, digest }: Font): Promise<NamedFont> {
  const font = renamed.get(digest) ?? renameNamed(file, digest);
  renamed.set(digest, font);
  return font;
}

async function renameNamed(path: string, digest: string): Promise<NamedFont> {
  const family = `Named ${digest}`;
  const font = unpackFont(await readFile(path));
  const own = font && renameFont(font, family);
  return own ? { file: await keep('named', own), family } : { file: path };
}

async function unpack(subset: string, weight: FontWeight): Promise<string> {
  const require = createRequire(import.meta.url);
  const name = `public-sans-${subset}-${weight}-normal`;
  return keep(
    name,
    fontOfWoff(await readFile(require.resolve(`@fontsource/public-sans/files/${name}.woff`))),
  );
}

/** Puts a font where a program that draws reads it; the folder lasts as long as the program where the cache is closed to us. */
async function keep(name: string, bytes: Buffer): Promise<string> {
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
