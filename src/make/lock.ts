import { rmSync } from 'node:fs';
import { readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { onExit } from 'signal-exit';
import { checkWritable, isStaged, Unwritable, unwritable } from './files.ts';

/** Lies in the output folder while a make is at work there, and names the process. */
const LOCK = '.making';

/**
 * Does a piece of work that has an output folder to itself: two makes at once would each take for granted what the
 * other replaces. What a process that died left behind is cleared away.
 * @throws Unwritable when another process is at work there, or nothing can be written.
 */
export async function withLock<T>(out: string, work: () => Promise<T>): Promise<T> {
  await checkWritable(out);
  const lock = join(out, LOCK);
  if (!(await takes(lock, out))) {
    await clearAfterTheDead(out, lock);
    if (!(await takes(lock, out))) throw busy(out, lock, '');
  }
  const forget = onExit(() => rmSync(lock, { force: true }));
  try {
    return await work();
  } finally {
    forget();
    await rm(lock, { force: true });
  }
}

/** Whether the lock was free and is now ours. */
async function takes(lock: string, out: string): Promise<boolean> {
  try {
    await writeFile(lock, `${process.pid} ${hostname()}`, { flag: 'wx' });
    return true;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EEXIST') return false;
    throw unwritable(out, error);
  }
}

/** @throws Unwritable when the process that holds the lock still runs, or runs where we cannot see it. */
async function clearAfterTheDead(out: string, lock: string): Promise<void> {
  const [pid = '', host] = (await readFile(lock, 'utf8').catch(() => '')).split(' ');
  if (host !== hostname()) throw busy(out, lock, host === undefined ? '' : ` (process ${pid} on ${host})`);
  if (isRunning(Number(pid))) throw busy(out, lock, ` (process ${pid})`);
  const files = await readdir(out, { recursive: true });
  for (const file of files.filter(isStaged)) await rm(join(out, file), { force: true });
  await rm(lock, { force: true });
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // A process that we may not send a signal to is there all the same.
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

function busy(out: string, lock: string, who: string): Unwritable {
  return new Unwritable(
    `another make${who} is at work in ${out}: wait until it is done, or, if none is, remove ${lock}`,
  );
}
