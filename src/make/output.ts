import { createHash, randomBytes } from 'node:crypto';
import { mkdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, join, relative, sep } from 'node:path';

/** A folder or file that cannot be written: the environment is at fault, not a project. */
export class Unwritable extends Error {
  override readonly name = 'Unwritable';
}

/** A file to be made: its path below the output folder, with `/` between, and its bytes. */
export type OutputFile = { readonly path: string; readonly bytes: Uint8Array };

/** What happened to a file: `kept` when it already had these very bytes. */
export type Written = { readonly path: string; readonly how: 'new' | 'changed' | 'kept' };

export function sha256(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}

export async function readIfThere(path: string): Promise<Uint8Array | undefined> {
  try {
    return await readFile(path);
  } catch {
    return undefined;
  }
}

/**
 * Puts a set of files in place together: all are first written beside their target, and only when every one is
 * safely on the disk are they renamed over the old ones. Files that already have the same bytes are left alone.
 * @throws Unwritable with a remedy.
 */
export async function putFiles(out: string, files: readonly OutputFile[]): Promise<Written[]> {
  const mark = `.making-${randomBytes(4).toString('hex')}`;
  const staged: { from: string; to: string }[] = [];
  const written: Written[] = [];
  try {
    for (const { path, bytes } of files) {
      const to = join(out, path);
      const old = await readIfThere(to);
      if (old && Buffer.compare(old, bytes) === 0) {
        written.push({ path, how: 'kept' });
        continue;
      }
      await mkdir(dirname(to), { recursive: true });
      await writeFile(`${to}${mark}`, bytes);
      staged.push({ from: `${to}${mark}`, to });
      written.push({ path, how: old ? 'changed' : 'new' });
    }
    for (const { from, to } of staged) await rename(from, to);
  } catch (error) {
    await Promise.all(staged.map(({ from }) => rm(from, { force: true })));
    throw unwritable(out, error);
  }
  return written;
}

/** Removes files that an earlier make put there and this one no longer makes. Never leaves the output folder. */
export async function removeFiles(out: string, paths: readonly string[]): Promise<void> {
  for (const path of paths) {
    const target = join(out, path);
    if (relative(out, target).startsWith(`..${sep}`)) continue;
    await rm(target, { force: true });
  }
}

/** @throws Unwritable when nothing can be written into the output folder, before any work is done. */
export async function checkWritable(out: string): Promise<void> {
  const probe = join(out, `.making-${randomBytes(4).toString('hex')}`);
  try {
    await mkdir(out, { recursive: true });
    await writeFile(probe, '');
    await rm(probe);
  } catch (error) {
    throw unwritable(out, error);
  }
}

export async function isFolder(path: string): Promise<boolean> {
  return stat(path).then(
    (found) => found.isDirectory(),
    () => false,
  );
}

function unwritable(out: string, error: unknown): Unwritable {
  const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
  return new Unwritable(
    `cannot write into ${out} (${code}): free or unlock it, or choose another folder with --out`,
  );
}
