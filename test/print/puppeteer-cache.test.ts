import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { Browser, computeExecutablePath, detectBrowserPlatform } from '@puppeteer/browsers';
import { afterAll, afterEach, describe, expect, it, vi } from 'vitest';
import { cachedBrowsers, downloadShell } from '../../src/print/puppeteer-cache.ts';

const cacheDir = mkdtempSync(join(tmpdir(), 'cache-test-'));
afterAll(() => rmSync(cacheDir, { recursive: true, force: true }));

const platform = detectBrowserPlatform();

/** Puts an empty program where Puppeteer's own tools would install a browser. */
function install(browser: Browser, buildId: string, on = platform): string {
  if (!on) throw new Error('this machine is none that Puppeteer knows');
  const path = computeExecutablePath({ browser, buildId, cacheDir, platform: on });
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, '', { mode: 0o755 });
  return path;
}

describe('Puppeteer’s cache', () => {
  it('may not be there', async () => {
    expect(await cachedBrowsers(join(cacheDir, 'nowhere'))).toEqual([]);
  });

  it('gives shells before whole browsers and the newest first, by number', async () => {
    const chrome = install(Browser.CHROME, '150.0.1.1');
    const older = install(Browser.CHROMEHEADLESSSHELL, '99.0.4844.51');
    const newer = install(Browser.CHROMEHEADLESSSHELL, '143.0.7499.40');
    install(Browser.FIREFOX, 'stable_140.0');
    expect(await cachedBrowsers(cacheDir)).toEqual([
      { path: newer, kind: 'shell' },
      { path: older, kind: 'shell' },
      { path: chrome, kind: 'full' },
    ]);
  });
});

describe('a download', () => {
  afterEach(() => vi.unstubAllEnvs());

  it('that cannot reach the network says what to do instead', async () => {
    // Every request goes to a port of this machine where nobody listens.
    for (const name of ['HTTPS_PROXY', 'https_proxy', 'ALL_PROXY', 'all_proxy'])
      vi.stubEnv(name, 'http://127.0.0.1:9');
    for (const name of ['NO_PROXY', 'no_proxy']) vi.stubEnv(name, '');
    const result = downloadShell(join(cacheDir, 'new'), () => {});
    await expect(result).rejects.toMatchObject({ name: 'BrowserMissing' });
    await expect(result).rejects.toThrow(
      /^no browser was found and none could be downloaded \(.*127\.0\.0\.1:9.*\); install Chromium, Chrome or Edge, or try again when the network can be reached$/u,
    );
  });
});
