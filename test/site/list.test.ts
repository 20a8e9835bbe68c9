import type { Page } from 'puppeteer-core';
import { describe, expect, it } from 'vitest';
import { openSite, visit } from './made.ts';

openSite();

/** The titles of the projects that can be seen in the lists below the next session, by section. */
async function shown(page: Page): Promise<Readonly<Record<string, readonly string[]>>> {
  // What there is to find is loaded when it is first asked for.
  await page.waitForFunction(
    `document.querySelector('.find [type="reset"]').hidden || globalThis.sheetwright.found`,
  );
  return (await page.evaluate(`Object.fromEntries([...document.querySelectorAll('.projects')]
    .filter((section) => section.checkVisibility())
    .map((section) => [section.querySelector('h2').textContent, [...section.querySelectorAll('.card')]
      .filter((card) => card.checkVisibility())
      .map((card) => card.querySelector('h3').textContent)]))`)) as Record<string, string[]>;
}

const status = (page: Page): Promise<string> =>
  page.$eval('[role="status"]', (line) => line.textContent ?? '');

/** Longer than the pause after which a count is told. */
const told = (): Promise<void> => new Promise((wait) => setTimeout(wait, 600));

const ALL = {
  'Upcoming sessions': [
    'Band for a bundle of note cards',
    'Three-layer thank-you card',
    'Bulb box in two sizes',
    'Gate-fold card with its own envelope',
    'Short pencil box',
    'Seed-paper note folder',
    'Plant marker box',
    'Paperback gift bag',
    'Plant and gift tags',
    'Reading-list accordion',
    'Oak leaf bookmark',
    'Wheat field card',
  ],
  'Earlier projects': ['Shortbread gift tray', 'Harbour light bookmark'],
  'More projects': [
    'Bird seed carrier',
    'Gift tag with a pull-out note',
    'Lighthouse pop-up card',
    'Porthole card',
    'Six-sided pencil pot',
    'Slide box of story starters',
    'Tuck-end box for a bar of soap',
  ],
};

/** The next session stands above the lists. */
const COUNT = Object.values(ALL).flat().length + 1;

describe('the list of projects', () => {
  it('shows the next session on top, then those to come, then what was, the latest first', async () => {
    const { page, complaints, requests } = await visit('index.html', { width: 1280 });
    const next = await page.$eval('.next', (section) => section.textContent?.replace(/\s+/gu, ' '));
    expect(next).toContain(
      'Next session Thursday, December 10, 2026, 6:30 PM CST Seed packet keeper A slim box with a clip-top that holds six seed packets. Reading room, Harbour Street Library',
    );
    expect(await shown(page)).toEqual(ALL);
    expect(complaints).toEqual([]);
    expect(requests.filter((address) => !address.startsWith('file:'))).toEqual([]);
  });

  it('stands whole without scripts, and offers no search that does nothing', async () => {
    const { page } = await visit('index.html', { width: 390, scripts: false });
    expect(await page.$eval('.find', (form) => form.checkVisibility())).toBe(false);
    // What is to come only the reader's day tells.
    const { 'Upcoming sessions': dated, ...others } = ALL;
    expect(await shown(page)).toEqual({ Sessions: dated, ...others });
    expect(await page.$eval('.next h3 a', (link) => link.getAttribute('href'))).toBe(
      'seed-packet-keeper/index.html',
    );
  });

  it('finds by words, wherever they stand, the next session among them', async () => {
    const { page } = await visit('index.html', { width: 1280 });
    await page.type('#find-text', 'BOX  garden');
    expect(await shown(page)).toEqual({
      // The tags, of the scrap box, hang on garden twine.
      Found: ['Seed packet keeper', 'Plant marker box', 'Plant and gift tags', 'Bird seed carrier'],
    });
    await told();
    expect(await status(page)).toBe(`4 of ${COUNT} projects`);
    await page.click('button[type="reset"]');
    expect(await shown(page)).toEqual(ALL);
    expect(await page.evaluate('document.activeElement.id')).toBe('find-text');
    await told();
    expect(await status(page)).toBe(`${COUNT} projects`);
  });

  it('finds by level, time, occasion and kind together', async () => {
    const { page } = await visit('index.html', { width: 390 });
    await page.select('#find-level', 'beginner');
    await page.select('#find-time', '45');
    expect(await shown(page)).toEqual({
      Found: [
        'Band for a bundle of note cards',
        'Three-layer thank-you card',
        'Plant and gift tags',
        'Reading-list accordion',
        'Oak leaf bookmark',
        'Harbour light bookmark',
        'Gift tag with a pull-out note',
      ],
    });
    await page.select('#find-tag', 'gift wrap');
    await page.select('#find-occasion', 'any gift');
    expect(await shown(page)).toEqual({ Found: ['Gift tag with a pull-out note'] });
  });

  it('says so when nothing is found', async () => {
    const { page } = await visit('index.html', { width: 390 });
    await page.type('#find-text', 'zeppelin');
    expect(await shown(page)).toEqual({});
    await told();
    expect(await status(page)).toBe(
      `0 of ${COUNT} projects. Nothing found. Try fewer or different words, or drop one choice.`,
    );
    // Of one thing asked there is nothing to let go of but all.
    expect(await page.$eval('.nothing', (ways) => ways.checkVisibility())).toBe(false);
  });

  it('says what there would be without one of the things that were asked', async () => {
    const { page } = await visit('index.html#q=box&level=beginner&tag=bookmark', { width: 390 });
    expect(await shown(page)).toEqual({});
    const ways = await page.$$eval('.nothing button', (buttons) => buttons.map((each) => each.textContent));
    expect(ways).toEqual(['Without the words (2)', 'Any type (4)']);
    await page.click('.nothing li:last-child button');
    expect((await shown(page)).Found).toHaveLength(4);
    expect(await page.evaluate('document.activeElement.id')).toBe('find-tag');
    expect(new URL(page.url()).hash).toBe('#q=box&level=beginner');
  });

  it('is sorted by time, title or the latest session, and narrowed to a year', async () => {
    const { page } = await visit('index.html', { width: 1280 });
    const titles = async (): Promise<readonly string[]> => (await shown(page)).Found ?? [];
    await page.select('#find-sort', 'time');
    const byTime = await titles();
    expect(byTime).toHaveLength(COUNT);
    expect(byTime.slice(0, 2)).toEqual(['Band for a bundle of note cards', 'Oak leaf bookmark']);
    await page.select('#find-sort', 'title');
    expect(await titles()).toEqual((await titles()).toSorted((a, b) => a.localeCompare(b)));
    await page.select('#find-sort', 'latest');
    expect((await titles())[0]).toBe('Wheat field card');
    await page.select('#find-year', '2026');
    expect(await titles()).toEqual(['Seed packet keeper', 'Shortbread gift tray', 'Harbour light bookmark']);
    await page.click('button[type="reset"]');
    expect(await shown(page)).toEqual(ALL);
  });

  it('says so when what there is to find cannot be loaded', async () => {
    const { page } = await visit('index.html', { width: 390 });
    await page.$eval('.find', (form) => form.setAttribute('data-search', 'nowhere.js'));
    await page.type('#find-text', 'box');
    await page.waitForFunction(
      `document.querySelector('.find [role="status"]').textContent.startsWith('The search could not be loaded')`,
    );
    expect((await page.$$('.card:not([hidden])')).length).toBe(COUNT - 1);
  });

  it('tells the count once, after the typing', async () => {
    const { page } = await visit('index.html', { width: 390 });
    await page.evaluate(`globalThis.heard = [];
      new MutationObserver(() => heard.push(document.querySelector('[role="status"]').textContent))
        .observe(document.querySelector('[role="status"]'), { childList: true, characterData: true, subtree: true })`);
    await told();
    await page.evaluate('heard.length = 0');
    await page.type('#find-text', 'card', { delay: 20 });
    await told();
    const heard = (await page.evaluate('heard')) as string[];
    expect([...new Set(heard)]).toHaveLength(1);
    expect(heard[0]).toMatch(new RegExp(`^\\d+ of ${COUNT} projects$`, 'u'));
  });

  it('keeps what is looked for in the address, to be passed on', async () => {
    const { page } = await visit('index.html', { width: 1280 });
    await page.select('#find-tag', 'gift wrap');
    await page.type('#find-text', 'tag');
    const address = String(await page.evaluate('location.href'));
    expect(new URLSearchParams(new URL(address).hash.slice(1)).toString()).toBe('q=tag&tag=gift+wrap');
    const looked = await shown(page);
    const again = await visit(`index.html${new URL(address).hash}`, { width: 1280 });
    expect(await shown(again.page)).toEqual(looked);
    expect(await again.page.$eval('#find-text', (field) => (field as { value?: string }).value)).toBe('tag');
    await again.page.evaluate(`location.hash = 'level=confident'`);
    await again.page.waitForFunction(`document.querySelector('#find-text').value === ''`);
    expect(await shown(again.page)).toEqual({ Found: ['Paperback gift bag'] });
  });

  it('takes no harm from an address that somebody bent', async () => {
    const { page, complaints } = await visit('index.html#level=%3Cscript%3E&time=soon&q=%', { width: 390 });
    expect(complaints).toEqual([]);
    expect(await page.$eval('#find-level', (field) => (field as { value?: string }).value)).toBe('');
  });

  it('is searched with the keyboard alone', async () => {
    const { page } = await visit('index.html', { width: 1280 });
    await page.keyboard.press('Tab');
    expect(await page.evaluate('document.activeElement.className')).toBe('skip');
    for (let press = 0; press < 20; press += 1) {
      await page.keyboard.press('Tab');
      if ((await page.evaluate('document.activeElement.id')) === 'find-text') break;
    }
    await page.keyboard.type('card');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    expect(await page.evaluate('document.activeElement.id')).toBe('find-level');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.waitForFunction(`document.querySelector('#find-level').value === 'improver'`);
    expect(await shown(page)).toEqual({
      Found: [
        'Gate-fold card with its own envelope',
        // Of a postcard's size, says its summary.
        'Seed-paper note folder',
        'Lighthouse pop-up card',
        'Porthole card',
        'Slide box of story starters',
      ],
    });
    for (const stop of ['find-time', 'find-occasion', 'find-tag', 'find-year', 'find-sort']) {
      await page.keyboard.press('Tab');
      expect(await page.evaluate('document.activeElement.id')).toBe(stop);
    }
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect(await shown(page)).toEqual(ALL);
  });
});
