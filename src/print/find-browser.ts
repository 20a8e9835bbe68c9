import { posix, win32 } from 'node:path';
import { cacheFolder } from '../recall/cache-folder.ts';
import type { Candidate, Launchable } from './candidate.ts';
import { BrowserMissing, NAME_ANOTHER, NoRoom } from './fault.ts';
import type { DownloadProgress, Surroundings } from './surroundings.ts';

/** Which browser is wanted, and what may be done to get one. */
type BrowserRequest = {
  /** The path given with `--browser`. */
  readonly browser?: string | undefined;
  /** Whether a browser may be downloaded when none is found. */
  readonly download: boolean;
  readonly onDownload: DownloadProgress;
};

/** The one program the user named; nothing else is tried, so that a wrong path is never passed over. */
function given(path: string, by: string, { at, platform }: Surroundings): Candidate {
  const found = `given by ${by}`;
  const inside =
    platform === 'darwin' ? 'the program in it, under Contents/MacOS' : 'the browser’s program in it';
  switch (at(path)) {
    case 'program':
      return { path, kind: kindOf(path), found };
    case 'folder':
      throw new BrowserMissing(`${path} is a folder (${found})`, `name ${inside}`);
    case 'file':
      throw new BrowserMissing(
        `${path} is not executable (${found})`,
        `allow it with chmod +x, ${NAME_ANOTHER}`,
      );
    case 'nothing':
      throw new BrowserMissing(
        `there is no file ${path} (${found})`,
        'correct the path, or leave it out to have a browser found',
      );
  }
}

/** Whether a program is a headless shell, told from its name. */
function kindOf(path: string): Launchable['kind'] {
  return /headless[-_]shell/iu.test(path) ? 'shell' : 'full';
}

function installed(surroundings: Surroundings): Candidate[] {
  const paths = [...new Set(usualPlaces(surroundings))];
  return paths
    .filter((path) => surroundings.at(path) === 'program')
    .map((path) => ({ path, kind: kindOf(path), found: 'installed on this machine' }));
}

/** Puppeteer's cache folder, by the same rule as its own tools. */
function puppeteerFolder({ env, platform, home }: Surroundings): string {
  const { join } = platform === 'win32' ? win32 : posix;
  return env.PUPPETEER_CACHE_DIR || join(home, '.cache', 'puppeteer');
}

/** The loader of the GNU C library: the carried browser is built for it and runs nowhere else. */
const GNU_LOADER = '/lib64/ld-linux-x86-64.so.2';

function canRunCarried({ platform, arch, at }: Surroundings): boolean {
  return platform === 'linux' && arch === 'x64' && at(GNU_LOADER) !== 'nothing';
}

/** One place to look for browsers. @throws BrowserMissing when what it would give cannot be had. */
type Source = () => Promise<readonly Candidate[]>;

/**
 * The places to look, best first, each to be asked only when those before it did not serve: the one program that the
 * user named and no other; or Puppeteer's cache; what is installed on the machine; the browser that comes with the
 * optional package; a download. Nothing but the last touches the network.
 */
export function sources(request: BrowserRequest, surroundings: Surroundings): readonly Source[] {
  const { PUPPETEER_EXECUTABLE_PATH: named } = surroundings.env;
  const [path, by] = request.browser ? [request.browser, '--browser'] : [named, 'PUPPETEER_EXECUTABLE_PATH'];
  if (path) return [async () => [given(path, by, surroundings)]];

  const folder = puppeteerFolder(surroundings);
  const cached: Source = async () =>
    (await surroundings.cached(folder))
      .filter(({ path }) => surroundings.at(path) === 'program')
      .map((each) => ({ ...each, found: 'in Puppeteer’s cache' }));
  const carried: Source = async () => {
    const browser = canRunCarried(surroundings) && (await surroundings.carried(cacheFolder(surroundings)));
    return browser ? [{ ...browser, found: 'carried by @sparticuz/chromium' }] : [];
  };
  const downloaded: Source = async () => {
    const browser = await surroundings.download(folder, request.onDownload);
    return [{ ...browser, found: 'downloaded' }];
  };
  const offline = [cached, async () => installed(surroundings), carried];
  return request.download ? [...offline, downloaded] : offline;
}

/** What is wrong with each that was found, or what to install where none was. */
function allFailed(faults: readonly BrowserMissing[], { platform }: Surroundings): BrowserMissing {
  // No other browser would help where none has room.
  const roomless = faults.find((fault) => fault instanceof NoRoom);
  if (roomless) return roomless;
  const last = faults.at(-1);
  if (last) return new BrowserMissing(faults.map(({ fact }) => fact).join('; '), last.remedy);
  const example = platform === 'linux' ? ' (on Debian or Ubuntu: apt install chromium)' : '';
  const remedy = `install Chromium, Chrome or Edge${example}, ${NAME_ANOTHER}`;
  return new BrowserMissing('no browser was found to print with', remedy);
}

/**
 * Starts the first browser that can be started. One that was found but does not start is passed over for the next.
 * @throws BrowserMissing when none starts, with what is wrong with each.
 */
export async function firstThatStarts<T>(
  places: readonly Source[],
  start: (candidate: Candidate) => Promise<T>,
  surroundings: Surroundings,
): Promise<T> {
  const faults: BrowserMissing[] = [];
  const remember = (error: unknown): void => {
    if (!(error instanceof BrowserMissing)) throw error;
    faults.push(error);
  };
  for (const place of places) {
    const found = await place().catch(remember);
    for (const candidate of found ?? []) {
      try {
        return await start(candidate);
      } catch (error) {
        remember(error);
      }
    }
  }
  throw allFailed(faults, surroundings);
}

/** The names under which distributions install each, in the order in which they serve: shells first, they are faster. */
const NAMES = [
  'chrome-headless-shell',
  'chromium-headless-shell',
  'headless-shell',
  'headless_shell',
  'google-chrome-stable',
  'google-chrome',
  'chromium',
  'chromium-browser',
  'microsoft-edge-stable',
  'microsoft-edge',
];

/** Folders that a shortened PATH, such as a scheduled job's, leaves out. */
const UNIX_FOLDERS = ['/usr/local/bin', '/usr/bin', '/opt/homebrew/bin', '/snap/bin'];

const LINUX_PLACES = [
  '/opt/google/chrome/chrome',
  '/usr/lib/chromium/chromium',
  '/opt/microsoft/msedge/msedge',
];

const MAC_APPLICATIONS = ['Google Chrome', 'Chromium', 'Microsoft Edge'];

const WINDOWS_PROGRAMS = [
  ['Google', 'Chrome', 'Application', 'chrome.exe'],
  ['Chromium', 'Application', 'chrome.exe'],
  ['Microsoft', 'Edge', 'Application', 'msedge.exe'],
];

type Machine = Pick<Surroundings, 'env' | 'platform' | 'home'>;

function onPath({ env, platform }: Machine): string[] {
  const { delimiter, join } = platform === 'win32' ? win32 : posix;
  const ending = platform === 'win32' ? '.exe' : '';
  const listed = (env.PATH ?? env.Path ?? '').split(delimiter).filter((folder) => folder !== '');
  const folders = platform === 'win32' ? listed : [...listed, ...UNIX_FOLDERS];
  return NAMES.flatMap((name) => folders.map((folder) => join(folder, name + ending)));
}

function onMac({ home }: Machine): string[] {
  return MAC_APPLICATIONS.flatMap((name) =>
    ['/Applications', posix.join(home, 'Applications')].map((folder) =>
      posix.join(folder, `${name}.app`, 'Contents', 'MacOS', name),
    ),
  );
}

function onWindows({ env }: Machine): string[] {
  const roots = [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA];
  return WINDOWS_PROGRAMS.flatMap((parts) =>
    roots.filter((root) => root !== undefined).map((root) => win32.join(root, ...parts)),
  );
}

/** Every path where a browser is usually installed on this kind of machine, in the order in which they serve. */
function usualPlaces(machine: Machine): string[] {
  const named = onPath(machine);
  if (machine.platform === 'darwin') return [...named, ...onMac(machine)];
  if (machine.platform === 'win32') return [...named, ...onWindows(machine)];
  return [...named, ...LINUX_PLACES];
}
