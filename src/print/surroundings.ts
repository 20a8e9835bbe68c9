import { accessSync, constants, statSync } from 'node:fs';
import { homeFolder } from '../recall/cache-folder.ts';
import type { Launchable } from './candidate.ts';
import { unpackCarried } from './carried.ts';
import { cachedBrowsers, downloadShell } from './puppeteer-cache.ts';

/** Called while a browser comes down: how many bytes have arrived, of how many. */
export type DownloadProgress = (received: number, total: number) => void;

/** All that finding a browser asks of the machine, so that the finding itself can be tried anywhere. */
export type Surroundings = {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: NodeJS.Platform;
  /** The processor, as Node names it: `x64`, `arm64`. */
  readonly arch: string;
  /** The user's own folder. */
  readonly home: string;
  /** Whether the user is root, whom Chromium's sandbox refuses. */
  readonly root: boolean;
  /** What stands at a path. A `program` is a file that this user may run. */
  at(path: string): 'nothing' | 'folder' | 'file' | 'program';
  /** The browsers in a cache folder of Puppeteer, newest first; none when there is no such folder. */
  cached(folder: string): Promise<readonly Launchable[]>;
  /**
   * The browser that comes with the optional package, unpacked below `cache` on first use; undefined when the package
   * is not installed.
   * @throws BrowserMissing when the folder cannot be written.
   */
  carried(cache: string): Promise<Launchable | undefined>;
  /** Downloads a headless shell into a cache folder of Puppeteer. @throws BrowserMissing when that fails. */
  download(folder: string, progress: DownloadProgress): Promise<Launchable>;
};

function whatStandsAt(path: string): ReturnType<Surroundings['at']> {
  try {
    if (statSync(path).isDirectory()) return 'folder';
  } catch {
    return 'nothing';
  }
  try {
    accessSync(path, constants.X_OK);
    return 'program';
  } catch {
    return 'file';
  }
}

/** The machine this runs on. */
export function realSurroundings(): Surroundings {
  return {
    env: process.env,
    platform: process.platform,
    arch: process.arch,
    home: homeFolder(),
    root: process.getuid?.() === 0,
    at: whatStandsAt,
    cached: cachedBrowsers,
    carried: unpackCarried,
    download: downloadShell,
  };
}
