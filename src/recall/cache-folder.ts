import { devNull, homedir } from 'node:os';
import { posix } from 'node:path';

/** Our own folder in the user's cache, by the XDG Base Directory Specification; never a shared temporary one. */
export function cacheFolder({
  env,
  home,
}: {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly home: string;
}): string {
  const base = env.XDG_CACHE_HOME;
  return posix.join(base && posix.isAbsolute(base) ? base : posix.join(home, '.cache'), 'sheetwright');
}

/** The user's; where there is none, as in some containers, a place that no folder can be made in. */
export function homeFolder(): string {
  try {
    return homedir();
  } catch {
    return devNull;
  }
}
