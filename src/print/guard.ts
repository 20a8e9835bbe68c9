import { rmSync } from 'node:fs';
import { onExit } from 'signal-exit';

/** A browser that runs, by its process, and the folder of its profile. */
export type Guarded = { readonly pid: number | undefined; readonly profile: string };

/** Sees to it that neither outlives this program, whichever way that ends. @returns Forgets them. */
export type Guard = (guarded: Guarded) => () => void;

/** Of the program's own thread, the only one that is told of its end. */
export const guardHere: Guard = ({ pid, profile }) =>
  onExit(() => {
    if (pid !== undefined) kill(pid);
    rmSync(profile, { recursive: true, force: true, maxRetries: 2 });
  });

/** A browser is the first of a group of processes, where there are groups. */
function kill(pid: number): void {
  try {
    process.kill(process.platform === 'win32' ? pid : -pid, 'SIGKILL');
  } catch {
    // It has ended.
  }
}
