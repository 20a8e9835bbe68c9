import { randomBytes } from 'node:crypto';
import { rmSync } from 'node:fs';
import { mkdir, readdir, readFile, rename, rm, rmdir, writeFile } from 'node:fs/promises';
import { basename, dirname, isAbsolute, join, relative, sep } from 'node:path';
import { onExit } from 'signal-exit';
import { clearDead, ownMark } from '../recall/process-mark.ts';
import { AT_ONCE } from '../recall/sealed.ts';

/** A folder or file that cannot be written: the environment is at fault, not a project. */
export class Unwritable extends Error {
  override readonly name = 'Unwritable';
}

/** A file to be made: its path below the output folder, with `/` between, and its bytes, or the text they are. */
export type OutputFile = { readonly path: string; readonly bytes: Uint8Array | string };

/** What happened to a file: `kept` when it already had these very bytes. */
export type Written = { readonly path: string; readonly how: 'new' | 'changed' | 'kept' };

/** Bytes as an address of their own. */
export function dataAddress(mediaType: string, bytes: Uint8Array): string {
  return `data:${mediaType};base64,${Buffer.from(bytes).toString('base64')}`;
}

export async function readIfThere(path: string): Promise<Uint8Array | undefined> {
  try {
    return await readFile(path, { flag: AT_ONCE });
  } catch {
    return undefined;
  }
}

/** Whether a file was being written when whoever wrote it died. */
export function isStaged(path: string): boolean {
  return /\.making-[0-9a-f]{8}$/u.test(path);
}

/**
 * Puts a set of files in place together: all are first written beside their target, and only when every one is
 * safely on the disk are they renamed over the old ones. Files that already have the same bytes are left alone.
 * @throws Unwritable with a remedy.
 */
export async function putFiles(out: string, files: readonly OutputFile[]): Promise<Written[]> {
  const staged: { from: string; to: string }[] = [];
  const written: Written[] = [];
  const forget = onExit(() => {
    for (const { from } of staged) rmSync(from, { force: true });
  });
  try {
    for (const { path, bytes } of files) {
      const to = join(out, path);
      const old = await readIfThere(to);
      if (old && Buffer.from(old).equals(typeof bytes === 'string' ? Buffer.from(bytes) : bytes)) {
        written.push({ path, how: 'kept' });
        continue;
      }
      const from = `${to}${stagingMark()}`;
      staged.push({ from, to });
      await writeInto(dirname(to), from, bytes);
      written.push({ path, how: old ? 'changed' : 'new' });
    }
    for (const { from, to } of staged) await rename(from, to);
  } catch (error) {
    // Where nothing could be written nothing can be removed either; what is reported is why it could not be written.
    await Promise.all(staged.map(({ from }) => rm(from, { force: true }).catch(() => {})));
    throw unwritable(out, error);
  } finally {
    forget();
  }
  return written;
}

/** Writes a file; the folder is made only if it turns out not to be there. */
async function writeInto(folder: string, path: string, bytes: Uint8Array | string): Promise<void> {
  try {
    await writeFile(path, bytes);
  } catch {
    await mkdir(folder, { recursive: true });
    await writeFile(path, bytes);
  }
}

/**
 * Removes files that an earlier make put there and this one no longer makes, and the folders that are empty then.
 * Never leaves the output folder. @throws Unwritable with a remedy.
 */
export async function removeFiles(out: string, paths: readonly string[]): Promise<void> {
  for (const path of paths) {
    const target = join(out, path);
    if (!isInside(out, target)) continue;
    try {
      await rm(target, { force: true });
    } catch (error) {
      throw unwritable(out, error);
    }
    await removeEmpty(dirname(target), out);
  }
}

/** Where remade pictures are kept; anything in it may go at any time. */
export function picturesFolder(out: string): string {
  return join(out, '.cache', 'pictures');
}

/** The digest of the photo that a picture kept there was made of. */
export function photoOf(name: string): string {
  return name.slice(0, name.indexOf('-'));
}

/** Removes from one of our folders what is no longer wanted; what cannot be removed stays. */
export async function keepOnly(folder: string, isWanted: (name: string) => boolean): Promise<void> {
  for (const name of await readdir(folder).catch(() => [])) {
    if (!isWanted(name)) await rm(join(folder, name), { force: true }).catch(() => {});
  }
}

/** Removes a folder and those around it, up to `out`, as far as there is nothing in them. */
async function removeEmpty(folder: string, out: string): Promise<void> {
  if (!isInside(out, folder)) return;
  const isGone = await rmdir(folder).then(
    () => true,
    () => false,
  );
  if (isGone) await removeEmpty(dirname(folder), out);
}

/** Whether a path lies in a folder and is not the folder itself, both without links. */
export function isInside(out: string, path: string): boolean {
  const way = relative(out, path);
  return way !== '' && way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

/**
 * Clears away what others that died in doing so left, too.
 * @throws Unwritable when nothing can be written into the output folder, before any work is done.
 */
export async function checkWritable(out: string): Promise<void> {
  const probe = passingFile(out);
  try {
    await mkdir(out, { recursive: true });
    await clearDead(out, PASSING);
    await writeFile(probe, '');
    await rm(probe);
  } catch (error) {
    throw unwritable(out, error);
  }
}

const PASSING = '.making-';

/** A file that lies in an output folder for a moment, and names this process: what a dead one left is known by it. */
export function passingFile(out: string): string {
  return join(out, `${PASSING}${ownMark()}-${randomBytes(4).toString('hex')}`);
}

/** What is put behind a name while its file is being written. */
function stagingMark(): string {
  return `.making-${randomBytes(4).toString('hex')}`;
}

/** A refusal of the file system, with the file that it is about: one that is open elsewhere cannot be replaced. */
export function unwritable(out: string, error: unknown): Unwritable {
  const { code = String(error), path, dest = path } = error as NodeJS.ErrnoException & { dest?: string };
  const isOurs = dest !== undefined && (isStaged(dest) || basename(dest).startsWith(PASSING));
  const at = dest !== undefined && isInside(out, dest) && !isOurs ? ` at ${relative(out, dest)}` : '';
  return new Unwritable(
    `cannot write into ${out} (${code}${at}): free or unlock it, or choose another folder with --out`,
  );
}
