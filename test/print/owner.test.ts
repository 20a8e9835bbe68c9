import { chmodSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { afterEach, describe, expect, it } from 'vitest';
import type { Desk } from '../../src/print/desk.ts';
import { sources } from '../../src/print/find-browser.ts';
import { BrowserOwner, type PrinterOptions } from '../../src/print/owner.ts';
import { realSurroundings } from '../../src/print/surroundings.ts';
import { emptyFolder } from '../cli/terminal.ts';

const owners: BrowserOwner[] = [];
afterEach(() => Promise.all(owners.splice(0).map((owner) => owner.close())));

function newOwner(options: PrinterOptions = {}): BrowserOwner {
  const owner = new BrowserOwner({ download: false, ...options });
  owners.push(owner);
  return owner;
}

/** Has the browser, or only the page's own process, crash by the browser's own command for it. */
async function crash({ page }: Desk, command: 'Browser.crash' | 'Page.crash'): Promise<never> {
  const session = await page.createCDPSession();
  await session.send(command);
  throw new Error('the browser survived');
}

/** A shell script in the place of a browser. */
function scripted(lines: string): string {
  const path = join(emptyFolder(), 'headless-shell');
  writeFileSync(path, `#!/bin/sh\n${lines}\n`);
  chmodSync(path, 0o755);
  return path;
}

/** The browser at hand, with something done before it starts and flags of its own. */
async function browserAfter(lines: string, flags = ''): Promise<string> {
  const request = { browser: undefined, download: false, onDownload: () => {} };
  for (const place of sources(request, realSurroundings())) {
    const [found] = await place();
    if (!found) continue;
    const { path, libraries = '', fonts = '' } = found;
    return scripted(`${lines}
export LD_LIBRARY_PATH="${libraries}" FONTCONFIG_FILE="${fonts}"
exec "${path}" "$@" ${flags}`);
  }
  throw new Error('no browser was found');
}

/** The browser at hand, of which the process of every page ends at once. */
const withoutPages = (): Promise<string> => browserAfter('', '--renderer-cmd-prefix=/bin/false');

const HTML = '<!doctype html><title>x</title><p id="a">fine</p>';

async function read(desk: Desk): Promise<unknown> {
  await desk.lay(HTML, 'a page', { medium: 'print' });
  return desk.page.evaluate('document.getElementById("a").textContent');
}

/** Clears away all that nothing leads to. */
function collectGarbage(): void {
  setFlagsFromString('--expose-gc');
  (runInNewContext('gc') as () => void)();
}

describe('the owner of the browser', () => {
  it('ends it after the jobs that wait once it may rest, and starts another for one that comes later', async () => {
    const owner = newOwner();
    const desks: Desk[] = [];
    const job = (desk: Desk): Promise<unknown> => {
      desks.push(desk);
      return read(desk);
    };
    const waiting = ['first', 'second'].map((what) => owner.inTurn(what, job));
    owner.rest();
    expect(await Promise.all(waiting)).toEqual(['fine', 'fine']);
    expect(await owner.inTurn('a third', job)).toBe('fine');
    const [first, second, third] = desks;
    expect(second).toBe(first);
    expect(third).not.toBe(first);
    expect(first?.page.browser().connected).toBe(false);
    expect(third?.page.browser().connected).toBe(true);
    owner.rest();
    await setImmediate();
    await owner.close();
    expect(third?.page.browser().connected).toBe(false);
  });

  it('holds nothing of what a page gave while its browser serves', async () => {
    const owner = newOwner();
    const given = new WeakRef(await owner.inTurn('a page', async (desk) => [await read(desk)]));
    expect(await owner.inTurn('another page', read)).toBe('fine');
    await setImmediate();
    collectGarbage();
    expect(given.deref()).toBeUndefined();
  });

  it.each(['Browser.crash', 'Page.crash'] as const)(
    'starts another when %s happens, once',
    async (command) => {
      const owner = newOwner();
      let tries = 0;
      const result = owner.inTurn('a page', async (desk) => {
        tries += 1;
        return tries === 1 ? crash(desk, command) : read(desk);
      });
      expect(await result).toBe('fine');
      expect(tries).toBe(2);
    },
  );

  it('starts one that is killed the moment it starts once more', async () => {
    const browser = await browserAfter('if mkdir "$0.killed" 2>/dev/null; then kill -KILL $$; fi');
    expect(await newOwner({ browser }).inTurn('a page', read)).toBe('fine');
  });

  it('starts one that is always killed no third time, and says so', async () => {
    const browser = scripted('echo x >> "$0.started"; kill -KILL $$');
    const result = newOwner({ browser }).inTurn('a page', read);
    await expect(result).rejects.toMatchObject({
      name: 'BrowserMissing',
      message: expect.stringContaining('was killed as it started'),
    });
    expect(readFileSync(`${browser}.started`, 'utf8')).toBe('x\nx\n');
  });

  it.each(['Browser.crash', 'Page.crash'] as const)('names it when %s happens again', async (command) => {
    const owner = newOwner();
    const result = owner.inTurn('a page', (desk) => crash(desk, command));
    await expect(result).rejects.toMatchObject({ name: 'PrintFault' });
    await expect(result).rejects.toThrow(`the browser died while printing a page, twice: ${owner.name}`);
    expect(owner.name).toContain('/');
    expect(await owner.inTurn('a page', read)).toBe('fine');
  });

  it('starts another when it was killed between two pages', async () => {
    const owner = newOwner();
    expect(await owner.inTurn('a page', read)).toBe('fine');
    await owner.inTurn('a page', async (desk) => {
      crash(desk, 'Browser.crash').catch(() => {});
    });
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(await owner.inTurn('a page', read)).toBe('fine');
  });

  it('passes on what went wrong with a page and serves the next', async () => {
    const owner = newOwner();
    const failing = owner.inTurn('a page', ({ page }) => page.evaluate('nonsense'));
    await expect(failing).rejects.toMatchObject({ name: 'PrintFault' });
    await expect(failing).rejects.toThrow(/^a page could not be printed \(.*nonsense is not defined.*\)$/su);
    expect(await owner.inTurn('a page', read)).toBe('fine');
  });

  it('tries again after no browser was found', async () => {
    const owner = new BrowserOwner({ browser: '/no/such/browser' });
    const first = owner.inTurn('a page', read);
    await expect(first).rejects.toThrow('there is no file /no/such/browser (given by --browser)');
    await expect(owner.inTurn('a page', read)).rejects.toMatchObject({ name: 'BrowserMissing' });
    await owner.close();
  });

  it.runIf(process.platform !== 'win32')('gives up a browser that opens no page', async () => {
    const owner = newOwner({ browser: await withoutPages(), launchTimeout: 3000 });
    const result = owner.inTurn('a page', read);
    await expect(result).rejects.toMatchObject({ name: 'BrowserMissing' });
    await expect(result).rejects.toThrow('ended as its first page was opened');
  });

  it.runIf(process.platform !== 'win32')('asks no browser that fails once more for each page', async () => {
    const log = join(emptyFolder(), 'log');
    const owner = newOwner({ browser: scripted(`echo started >> "${log}"`) });
    const pages = ['one', 'two', 'three'].map((name) => owner.inTurn(name, read));
    for (const page of await Promise.allSettled(pages))
      expect(page).toMatchObject({ status: 'rejected', reason: { name: 'BrowserMissing' } });
    expect(readFileSync(log, 'utf8')).toBe('started\n');
    await expect(owner.inTurn('four', read)).rejects.toMatchObject({ name: 'BrowserMissing' });
    expect(readFileSync(log, 'utf8')).toBe('started\nstarted\n');
  });
});
