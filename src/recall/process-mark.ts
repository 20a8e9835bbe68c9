import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { readdir, rm, stat } from 'node:fs/promises';
import { uptime } from 'node:os';
import { join } from 'node:path';

/**
 * Tells this process from all others of this machine, those that get its number later included: `4711-1a2b3c4d`. Where the
 * system does not say when a process began, the number alone: `4711-0`.
 */
export function ownMark(): string {
  return `${process.pid}-${beginningOf(process.pid)}`;
}

/** Whether the process still runs that left a mark, at that time in milliseconds. */
export function isAlive(mark: string, left: number): boolean {
  const [, pid, began = '0'] = /^(\d+)(?:-([0-9a-f]+))?$/u.exec(mark) ?? [];
  if (pid === undefined || left < bootTime() - SLACK || !isRunning(Number(pid))) return false;
  const now = beginningOf(Number(pid));
  return began === '0' || now === '0' || now === began;
}

/** Removes from a folder what dead processes left there, named `prefix`, mark, `-` and anything. */
export async function clearDead(folder: string, prefix: string): Promise<void> {
  for (const name of await readdir(folder).catch(() => [])) {
    if (!name.startsWith(prefix)) continue;
    const path = join(folder, name);
    const mark = /^\d+-[0-9a-f]+(?=-)/u.exec(name.slice(prefix.length))?.[0];
    const left = (await stat(path).catch(() => undefined))?.mtimeMs;
    // One without a mark is of an earlier version, or not ours.
    if (mark === undefined || left === undefined || isAlive(mark, left)) continue;
    await rm(path, { recursive: true, force: true }).catch(() => {});
  }
}

/** How far clocks may have been set, in milliseconds. */
const SLACK = 60_000;

function bootTime(): number {
  return Date.now() - uptime() * 1000;
}

/** When a process began, as Linux tells it (proc(5): field 22 of `stat`, in ticks since the boot of that id), hashed. */
function beginningOf(pid: number): string {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    // The name in brackets may itself hold spaces and brackets.
    const ticks = stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? '';
    const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8');
    return createHash('sha256').update(`${boot}${ticks}`).digest('hex').slice(0, 8);
  } catch {
    return '0';
  }
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
