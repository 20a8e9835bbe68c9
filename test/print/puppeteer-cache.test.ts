import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { Browser, computeExecutablePath, detectBrowserPlatform } from '@puppeteer/browsers';
import { afterAll, describe, expect, it } from 'vitest';
import { cachedBrowsers } from '../../src/print/puppeteer-cache.ts';

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
