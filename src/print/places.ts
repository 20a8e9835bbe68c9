import { posix, win32 } from 'node:path';
import type { Surroundings } from './surroundings.ts';

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
export function usualPlaces(machine: Machine): string[] {
  const named = onPath(machine);
  if (machine.platform === 'darwin') return [...named, ...onMac(machine)];
  if (machine.platform === 'win32') return [...named, ...onWindows(machine)];
  return [...named, ...LINUX_PLACES];
}
