import { rmSync } from 'node:fs';
import { link, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { basename, join } from 'node:path';
import { onExit } from 'signal-exit';
import { isAlive, ownMark } from '../recall/process-mark.ts';
import { checkWritable, isStaged, passingFile, Unwritable, unwritable } from './files.ts';

/** Lies in the output folder while a make is at work there, and names the process. */
const LOCK = '.making';

/** Another make is at work in the output folder: it will be done. */
export class Busy extends Unwritable {}

/**
 * Does a piece of work that has an output folder to itself: two makes at once would each take for granted what the
 * other replaces. What a process that died left behind is cleared away.
 * @throws Busy when another process is at work there. @throws Unwritable when nothing can be written.
 */
export async function withLock<T>(out: string, work: () => Promise<T>): Promise<T> {
  const release = await takeLock(out, LOCK);
  try {
    return await work();
  } finally {
    await release();
  }
}

/** Takes a lock of that name in a folder, until it is released or this process ends. @throws As `withLock` does. */
export async function takeLock(out: string, name: string): Promise<() => Promise<void>> {
  await checkWritable(out);
  const lock = join(out, name);
  if (!(await takes(lock, out))) {
    await clearAfterTheDead(out, lock);
    if (!(await takes(lock, out))) throw busy(out, lock, '');
  }
  const forget = onExit(() => rmSync(lock, { force: true }));
  return async () => {
    forget();
    await rm(lock, { force: true });
  };
}

/** Whether the lock was free and is now ours. It is written beside its place first, so that it is whole or not there. */
async function takes(lock: string, out: string): Promise<boolean> {
  const beside = passingFile(out);
  const mark = `${ownMark()} ${hostname()}`;
  try {
    await writeFile(beside, mark);
    // Not every file system has links: there it is written in its place.
    await link(beside, lock).catch((error: unknown) => {
      if (codeOf(error) === 'EEXIST') throw error;
      return writeFile(lock, mark, { flag: 'wx' });
    });
    return true;
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false;
    throw unwritable(out, error);
  } finally {
    await rm(beside, { force: true });
  }
}

function codeOf(error: unknown): string | undefined {
  return error instanceof Error && 'code' in error ? String(error.code) : undefined;
}

/** What an empty lock may be old, in milliseconds: it is just being written, or a full disk had no room for it. */
const EMPTY = 2000;

/** @throws Busy when the process that holds the lock still runs, or runs where we cannot see it. */
async function clearAfterTheDead(out: string, lock: string): Promise<void> {
  const text = await readFile(lock, 'utf8').catch(() => '');
  const left = (await stat(lock).catch(() => undefined))?.mtimeMs ?? 0;
  const [mark = '', host] = text.split(' ');
  const isDead = text === '' ? left < Date.now() - EMPTY : host === hostname() && !isAlive(mark, left);
  if (!isDead) throw busy(out, lock, tellHolder(mark, host));
  await takeAway(out, lock, text);
  if (basename(lock) !== LOCK) return;
  const files = await readdir(out, { recursive: true });
  for (const file of files.filter(isStaged)) await rm(join(out, file), { force: true });
}

function tellHolder(mark: string, host: string | undefined): string {
  if (host === undefined) return '';
  return ` (process ${mark.split('-')[0]}${host === hostname() ? '' : ` on ${host}`})`;
}

/** Two that find the same dead lock: the one that moves it aside second has moved the lock of the first, and puts it back. */
async function takeAway(out: string, lock: string, text: string): Promise<void> {
  const aside = passingFile(out);
  await rename(lock, aside).catch(() => {});
  const taken = await readFile(aside, 'utf8').catch(() => text);
  if (taken !== text) await link(aside, lock).catch(() => {});
  await rm(aside, { force: true });
  if (taken !== text) throw busy(out, lock, '');
}

function busy(out: string, lock: string, who: string): Busy {
  return new Busy(
    `another make${who} is at work in ${out}: wait until it is done, or, if none is, remove ${lock}`,
  );
}
