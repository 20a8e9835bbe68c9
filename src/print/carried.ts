import { createReadStream, createWriteStream, existsSync, rmSync } from 'node:fs';
import { mkdir, mkdtemp, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { basename, dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { createBrotliDecompress } from 'node:zlib';
import { onExit } from 'signal-exit';
import { clearDead, ownMark } from '../recall/process-mark.ts';
import type { Launchable } from './candidate.ts';
import { BrowserMissing, isUnwritable, unwritable } from './fault.ts';

/** The optional package that carries a headless shell as compressed files: https://github.com/Sparticuz/chromium */
const PACKAGE = '@sparticuz/chromium';

/** What we call the program; the name tells that it is a headless shell. */
const PROGRAM = 'headless-shell';

type Tar = { extract(folder: string, options: { chown: boolean }): NodeJS.WritableStream };

/** Where the package is and which version; undefined when it is not installed. */
async function installedPackage(): Promise<{ bin: string; version: string; tar: Tar } | undefined> {
  const require = createRequire(import.meta.url);
  let entry: string;
  try {
    entry = require.resolve(PACKAGE);
  } catch {
    return undefined;
  }
  const root = entry.slice(0, entry.lastIndexOf(join(PACKAGE, '/')) + PACKAGE.length);
  const { version } = JSON.parse(await readFile(join(root, 'package.json'), 'utf8')) as { version: string };
  // The package's own unpacking knows only the shared temporary folder; its tar reader takes any.
  const tar = createRequire(entry)('tar-fs') as Tar;
  return { bin: join(root, 'bin'), version, tar };
}

/**
 * The package's own list names folders of the machine it was made for. Ours are relative to the file itself, with the
 * user's fonts after those carried, for scripts that none of our fonts has.
 */
const FONTS_CONF = `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir prefix="relative">fonts/fonts</dir>
  <dir>/usr/share/fonts</dir>
  <dir>/usr/local/share/fonts</dir>
  <dir prefix="xdg">fonts</dir>
  <cachedir prefix="xdg">fontconfig</cachedir>
</fontconfig>
`;

async function fill(folder: string, bin: string, tar: Tar): Promise<void> {
  const inflate = (name: string, into: NodeJS.WritableStream): Promise<void> =>
    pipeline(createReadStream(join(bin, name)), createBrotliDecompress(), into);
  // Everything belongs to who unpacks it, whatever owner the archives name.
  await Promise.all([
    inflate('chromium.br', createWriteStream(join(folder, PROGRAM), { mode: 0o755 })),
    inflate('al2023.tar.br', tar.extract(join(folder, 'libraries'), { chown: false })),
    inflate('fonts.tar.br', tar.extract(join(folder, 'fonts'), { chown: false })),
    writeFile(join(folder, 'fonts.conf'), FONTS_CONF),
  ]);
}

/**
 * Unpacks beside the folder and renames, so that whoever sees the folder sees it whole, also when two processes start
 * at once: the slower one's rename fails on a folder that is already there, and its work is thrown away.
 */
async function unpackTo(folder: string, bin: string, tar: Tar): Promise<void> {
  await mkdir(dirname(folder), { recursive: true, mode: 0o700 });
  const beside = await mkdtemp(`${folder}-${ownMark()}-`);
  const forget = onExit(() => rmSync(beside, { recursive: true, force: true }));
  try {
    await fill(beside, bin, tar);
    await rename(beside, folder).catch(async (error: unknown) => {
      if (existsSync(join(folder, PROGRAM))) return;
      if (!existsSync(folder)) throw error;
      // A folder without its program was tampered with: no unpacking leaves one.
      await rm(folder, { recursive: true });
      await rename(beside, folder);
    });
  } finally {
    forget();
    await rm(beside, { recursive: true, force: true });
  }
}

/** The carried browser in a folder of its own below `cache`, unpacked there if it is not yet. */
export async function unpackCarried(cache: string): Promise<Launchable | undefined> {
  const found = await installedPackage();
  if (!found) return undefined;
  const folder = join(cache, `browser-${found.version}`);
  const path = join(folder, PROGRAM);
  await clearDead(cache, `${basename(folder)}-`);
  try {
    if (!existsSync(path)) await unpackTo(folder, found.bin, found.tar);
  } catch (error) {
    if (isUnwritable(error)) throw unwritable(cache, 'XDG_CACHE_HOME', error);
    const cause = error instanceof Error ? error.message : String(error);
    throw new BrowserMissing(
      `${PACKAGE} cannot be unpacked (${cause})`,
      'install the packages again with npm install',
    );
  }
  return {
    path,
    kind: 'shell',
    libraries: join(folder, 'libraries', 'lib'),
    fonts: join(folder, 'fonts.conf'),
  };
}
