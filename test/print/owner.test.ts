import { afterEach, describe, expect, it } from 'vitest';
import type { Desk } from '../../src/print/desk.ts';
import { BrowserOwner } from '../../src/print/owner.ts';

const owners: BrowserOwner[] = [];
afterEach(() => Promise.all(owners.splice(0).map((owner) => owner.close())));

function newOwner(): BrowserOwner {
  const owner = new BrowserOwner({ download: false });
  owners.push(owner);
  return owner;
}

/** Has the browser, or only the page's own process, crash by the browser's own command for it. */
async function crash({ page }: Desk, command: 'Browser.crash' | 'Page.crash'): Promise<never> {
  const session = await page.createCDPSession();
  await session.send(command);
  throw new Error('the browser survived');
}

const HTML = '<!doctype html><title>x</title><p id="a">fine</p>';

async function read(desk: Desk): Promise<unknown> {
  await desk.lay(HTML, 'a page', { medium: 'print' });
  return desk.page.evaluate('document.getElementById("a").textContent');
}

describe('the owner of the browser', () => {
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
});
