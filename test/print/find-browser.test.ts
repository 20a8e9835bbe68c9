import { describe, expect, it } from 'vitest';
import type { Candidate, Launchable } from '../../src/print/candidate.ts';
import { BrowserMissing } from '../../src/print/fault.ts';
import { firstThatStarts, sources } from '../../src/print/find-browser.ts';
import type { Surroundings } from '../../src/print/surroundings.ts';

type Machine = Partial<Omit<Surroundings, 'at' | 'carried'>> & {
  readonly programs?: readonly string[];
  readonly files?: readonly string[];
  readonly folders?: readonly string[];
  readonly carries?: Launchable;
};

const CARRIED: Launchable = { path: '/cache/shell', kind: 'shell', libraries: '/cache/lib' };
const LOADER = '/lib64/ld-linux-x86-64.so.2';
type BrowserRequest = Parameters<typeof sources>[0];

const REQUEST: BrowserRequest = { download: false, onDownload: () => {} };

/** A machine on paper, and what was asked of it. */
function machine(facts: Machine = {}): Surroundings & { readonly asked: string[] } {
  const { programs = [], files = [LOADER], folders = [], carries, ...rest } = facts;
  const asked: string[] = [];
  return {
    env: {},
    platform: 'linux',
    arch: 'x64',
    home: '/home/ann',
    root: false,
    cached: async (folder) => {
      asked.push(`cache ${folder}`);
      return [];
    },
    download: async (folder) => {
      asked.push(`download into ${folder}`);
      return { path: `${folder}/new`, kind: 'shell' };
    },
    ...rest,
    asked,
    at: (path) => {
      if (programs.includes(path)) return 'program';
      if (folders.includes(path)) return 'folder';
      return files.includes(path) ? 'file' : 'nothing';
    },
    carried: async (folder) => {
      asked.push(`carried ${folder}`);
      return carries;
    },
  };
}

/** Everything that would be tried, in order. */
async function tried(
  surroundings: Surroundings,
  request: Partial<BrowserRequest> = {},
): Promise<Candidate[]> {
  const found = await Promise.all(sources({ ...REQUEST, ...request }, surroundings).map((place) => place()));
  return found.flat();
}

async function pathsTried(surroundings: Surroundings, request?: Partial<BrowserRequest>): Promise<string[]> {
  return (await tried(surroundings, request)).map(({ path }) => path);
}

describe('the browser is looked for', () => {
  const everything: Machine = {
    programs: ['/mine', '/env', '/home/ann/.cache/puppeteer/s', '/usr/bin/chromium', CARRIED.path],
    cached: async (folder) => [{ path: `${folder}/s`, kind: 'shell' }],
    carries: CARRIED,
  };

  it('where the option says and nowhere else', async () => {
    const surroundings = machine({ ...everything, env: { PUPPETEER_EXECUTABLE_PATH: '/env' } });
    expect(await pathsTried(surroundings, { browser: '/mine', download: true })).toEqual(['/mine']);
    expect(surroundings.asked).toEqual([]);
  });

  it('where the environment says and nowhere else', async () => {
    const surroundings = machine({ ...everything, env: { PUPPETEER_EXECUTABLE_PATH: '/env' } });
    expect(await pathsTried(surroundings, { download: true })).toEqual(['/env']);
  });

  it('in Puppeteer’s cache, on the machine, in the package, then by download', async () => {
    expect(await pathsTried(machine(everything), { download: true })).toEqual([
      '/home/ann/.cache/puppeteer/s',
      '/usr/bin/chromium',
      CARRIED.path,
      '/home/ann/.cache/puppeteer/new',
    ]);
  });

  it('without a download unless it is allowed', async () => {
    const surroundings = machine();
    expect(await pathsTried(surroundings)).toEqual([]);
    expect(surroundings.asked.join()).not.toContain('download');
  });

  it('in no later place once one serves', async () => {
    const surroundings = machine(everything);
    const served = await firstThatStarts(
      sources(REQUEST, surroundings),
      async ({ path }) => path,
      surroundings,
    );
    expect(served).toBe('/home/ann/.cache/puppeteer/s');
    expect(surroundings.asked).toEqual([]);
  });

  it.each([
    [{}, '/home/ann/.cache/puppeteer'],
    [{ PUPPETEER_CACHE_DIR: '/big/disk' }, '/big/disk'],
  ])('in the cache folder that %j names', async (env, folder) => {
    const surroundings = machine({ env });
    await tried(surroundings);
    expect(surroundings.asked[0]).toBe(`cache ${folder}`);
  });

  // XDG Base Directory Specification 0.8: the cache is $XDG_CACHE_HOME, else $HOME/.cache; relative paths are ignored.
  it.each([
    [{}, '/home/ann/.cache/sheetwright'],
    [{ XDG_CACHE_HOME: '/big/disk' }, '/big/disk/sheetwright'],
    [{ XDG_CACHE_HOME: 'here' }, '/home/ann/.cache/sheetwright'],
  ])('in our own folder by %j', async (env, folder) => {
    const surroundings = machine({ env });
    await tried(surroundings);
    expect(surroundings.asked).toContain(`carried ${folder}`);
  });

  it.each([
    ['another system', { platform: 'darwin' as const }],
    ['another processor', { arch: 'arm64' }],
    ['another C library', { files: [] }],
  ])('not in the package on %s, where its browser cannot run', async (_, facts) => {
    const surroundings = machine({ ...facts, carries: CARRIED });
    expect(await pathsTried(surroundings)).toEqual([]);
    expect(surroundings.asked.join()).not.toContain('carried');
  });
});

describe('on the machine', () => {
  it('a headless shell goes before any whole browser, wherever it is', async () => {
    const programs = ['/usr/bin/google-chrome', '/opt/late/chrome-headless-shell', '/usr/bin/chromium'];
    const found = await tried(machine({ programs, env: { PATH: '/usr/bin:/opt/late' } }));
    expect(found.map(({ path, kind }) => [path, kind])).toEqual([
      ['/opt/late/chrome-headless-shell', 'shell'],
      ['/usr/bin/google-chrome', 'full'],
      ['/usr/bin/chromium', 'full'],
    ]);
  });

  it.each([
    ['linux', {}, '/snap/bin/chromium'],
    ['linux', { PATH: '/a' }, '/a/microsoft-edge-stable'],
    ['linux', {}, '/opt/google/chrome/chrome'],
    ['darwin', {}, '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome'],
    ['darwin', {}, '/home/ann/Applications/Chromium.app/Contents/MacOS/Chromium'],
    ['darwin', {}, '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge'],
    ['darwin', {}, '/opt/homebrew/bin/chromium'],
    [
      'win32',
      { PROGRAMFILES: 'C:\\Program Files' },
      'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
    ],
    ['win32', { 'PROGRAMFILES(X86)': 'C:\\x86' }, 'C:\\x86\\Microsoft\\Edge\\Application\\msedge.exe'],
    ['win32', { LOCALAPPDATA: 'C:\\me' }, 'C:\\me\\Chromium\\Application\\chrome.exe'],
    ['win32', { Path: 'C:\\t;D:\\b' }, 'D:\\b\\chrome-headless-shell.exe'],
  ] as const)('%s with %j has one at %s', async (platform, env, path) => {
    expect(await pathsTried(machine({ platform, env, programs: [path] }))).toEqual([path]);
  });

  it('what is no program is passed over', async () => {
    expect(
      await pathsTried(machine({ files: ['/usr/bin/chromium'], folders: ['/usr/bin/google-chrome'] })),
    ).toEqual([]);
  });
});

describe('a path the user gave', () => {
  it.each([
    [
      {},
      'there is no file /x (given by --browser); correct the path, or leave it out to have a browser found',
    ],
    [{ folders: ['/x'] }, '/x is a folder (given by --browser); name the browser’s program in it'],
    [
      { folders: ['/x'], platform: 'darwin' as const },
      '/x is a folder (given by --browser); name the program in it, under Contents/MacOS',
    ],
    [
      { files: ['/x'] },
      '/x is not executable (given by --browser); allow it with chmod +x, or name another browser with --browser PATH',
    ],
  ])('on %j is wrong', async (facts, message) => {
    const wrong = tried(machine(facts), { browser: '/x' });
    await expect(wrong).rejects.toMatchObject({ name: 'BrowserMissing', message });
  });

  it('is named by the variable it came from', async () => {
    const wrong = tried(machine({ env: { PUPPETEER_EXECUTABLE_PATH: '/x' } }));
    await expect(wrong).rejects.toThrow('there is no file /x (given by PUPPETEER_EXECUTABLE_PATH)');
  });
});

describe('when none serves', () => {
  const start = async ({ path }: Candidate): Promise<string> => {
    if (path.includes('broken')) throw new BrowserMissing(`${path} crashed`, `mend ${path}`);
    return path;
  };

  it('one line says what to install', async () => {
    const surroundings = machine();
    const none = firstThatStarts(sources(REQUEST, surroundings), start, surroundings);
    await expect(none).rejects.toMatchObject({
      message:
        'no browser was found to print with; install Chromium, Chrome or Edge (on Debian or Ubuntu: apt install chromium), or name another browser with --browser PATH',
    });
  });

  it('one that does not start is passed over', async () => {
    const surroundings = machine({
      programs: ['/broken/chromium', '/usr/bin/chromium'],
      env: { PATH: '/broken' },
    });
    expect(await firstThatStarts(sources(REQUEST, surroundings), start, surroundings)).toBe(
      '/usr/bin/chromium',
    );
  });

  it('what is wrong with each is said, and the last one’s remedy', async () => {
    const surroundings = machine({
      programs: ['/broken/chromium'],
      env: { PATH: '/broken' },
      carries: { path: '/broken/shell', kind: 'shell' },
    });
    const none = firstThatStarts(sources(REQUEST, surroundings), start, surroundings);
    await expect(none).rejects.toThrow('/broken/chromium crashed; /broken/shell crashed; mend /broken/shell');
  });

  it('a place that fails does not hide the next', async () => {
    const surroundings: Surroundings = {
      ...machine(),
      carried: async () => {
        throw new BrowserMissing('full', 'empty it');
      },
    };
    const request = { ...REQUEST, download: true };
    expect(await firstThatStarts(sources(request, surroundings), start, surroundings)).toBe(
      '/home/ann/.cache/puppeteer/new',
    );
    await expect(firstThatStarts(sources(REQUEST, surroundings), start, surroundings)).rejects.toThrow(
      'full; empty it',
    );
  });

  it('an error of ours is no missing browser', async () => {
    const surroundings = machine({ programs: ['/usr/bin/chromium'] });
    const bug = firstThatStarts(
      sources(REQUEST, surroundings),
      async () => {
        throw new TypeError('a bug');
      },
      surroundings,
    );
    await expect(bug).rejects.toThrow(TypeError);
  });
});
