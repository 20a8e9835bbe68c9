import { existsSync } from 'node:fs';
import type { Launchable } from './candidate.ts';
import { BrowserMissing, isUnwritable, unwritable } from './fault.ts';

const KINDS: Readonly<Record<string, Launchable['kind']>> = {
  'chrome-headless-shell': 'shell',
  chrome: 'full',
  chromium: 'full',
};

/** Shells before whole browsers, newer before older. */
function before(first: { kind: string; buildId: string }, second: { kind: string; buildId: string }): number {
  if (first.kind !== second.kind) return first.kind === 'shell' ? -1 : 1;
  return second.buildId.localeCompare(first.buildId, 'en', { numeric: true });
}

/** The browsers in a cache folder of Puppeteer for this kind of machine, in the order in which they serve. */
export async function cachedBrowsers(folder: string): Promise<readonly Launchable[]> {
  if (!existsSync(folder)) return [];
  const { detectBrowserPlatform, getInstalledBrowsers } = await import('@puppeteer/browsers');
  const platform = detectBrowserPlatform();
  const browsers = await getInstalledBrowsers({ cacheDir: folder });
  return browsers
    .filter((each) => each.platform === platform)
    .flatMap(({ browser, buildId, executablePath }) => {
      const kind = KINDS[browser];
      return kind ? [{ path: executablePath, kind, buildId }] : [];
    })
    .sort(before)
    .map(({ path, kind }) => ({ path, kind }));
}

/** A download that failed, told from its error. */
function failed(folder: string, error: unknown): BrowserMissing {
  if (isUnwritable(error)) return unwritable(folder, 'PUPPETEER_CACHE_DIR', error);
  const cause = (error instanceof Error ? error.message : String(error)).split('\n')[0];
  return new BrowserMissing(
    `no browser was found and none could be downloaded (${cause})`,
    'install Chromium, Chrome or Edge, or try again when the network can be reached',
  );
}

/**
 * Downloads the newest stable headless shell into a cache folder of Puppeteer, where the next run finds it.
 * The only step that uses the network.
 * @throws BrowserMissing when the network or the folder cannot be used, or there is no download for this machine.
 */
export async function downloadShell(
  folder: string,
  progress: (received: number, total: number) => void,
): Promise<Launchable> {
  const { Browser, detectBrowserPlatform, install, resolveBuildId } = await import('@puppeteer/browsers');
  const browser = Browser.CHROMEHEADLESSSHELL;
  try {
    const platform = detectBrowserPlatform();
    if (!platform) throw new Error(`there is none for ${process.platform} on ${process.arch}`);
    const buildId = await resolveBuildId(browser, platform, 'stable');
    const { executablePath } = await install({
      browser,
      buildId,
      platform,
      cacheDir: folder,
      downloadProgressCallback: progress,
    });
    return { path: executablePath, kind: 'shell' };
  } catch (error) {
    throw failed(folder, error);
  }
}
