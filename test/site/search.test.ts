import { mkdirSync, mkdtempSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'puppeteer-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { createRenderer } from '../../src/handout/render.ts';
import { pagesAt, searchAsset, siteAssets } from '../../src/make/assets.ts';
import { readPackageFiles } from '../../src/make/package-files.ts';
import { dateOfDay, dayNumber } from '../../src/project/schedule.ts';
import { indexHtml } from '../../src/site/index-page.ts';
import type { ListedProject } from '../../src/site/listed.ts';
import { shelfHtml, shelvesOf } from '../../src/site/shelves.ts';
import { labels } from '../handout/sample.ts';
import { TODAY } from '../made-demo.ts';
import { listed, siteOf } from './bench.ts';
import { openSite, visit, visitAt } from './made.ts';

openSite();

/** What somebody types, and a project that must be among what is found; none where nothing may be. */
const QUERIES: readonly (readonly [string, string | undefined])[] = [
  ['box', 'Short pencil box'],
  ['boxes', 'Short pencil box'],
  ['BOXES', 'Seed packet keeper'],
  ['bookmark', 'Oak leaf bookmark'],
  ['bookmarks', 'Harbour light bookmark'],
  ['bookmrk', 'Oak leaf bookmark'],
  ['bokmark', 'Oak leaf bookmark'],
  ['valentine', 'Gate-fold card with its own envelope'],
  ['valentines', 'Gate-fold card with its own envelope'],
  ['valentin', 'Gate-fold card with its own envelope'],
  ['cards', 'Porthole card'],
  ['card layers', 'Wheat field card'],
  ['garden box', 'Plant marker box'],
  ['seed', 'Bird seed carrier'],
  ['seeds', 'Seed packet keeper'],
  ['packets', 'Seed packet keeper'],
  ['pencils', 'Short pencil box'],
  ['pensil', 'Six-sided pencil pot'],
  ['tags', 'Plant and gift tags'],
  ['tag', 'Gift tag with a pull-out note'],
  ['gift', 'Tuck-end box for a bar of soap'],
  ['gifts', 'Tuck-end box for a bar of soap'],
  ['envelopes', 'Gate-fold card with its own envelope'],
  ['envelop', 'Gate-fold card with its own envelope'],
  ['lighthouse', 'Lighthouse pop-up card'],
  ['lighthous', 'Lighthouse pop-up card'],
  ['pop-up', 'Lighthouse pop-up card'],
  ['popup', 'Lighthouse pop-up card'],
  ['accordion', 'Reading-list accordion'],
  ['acordion', 'Reading-list accordion'],
  ['soap', 'Tuck-end box for a bar of soap'],
  ['stamping', 'Wheat field card'],
  ['wheat', 'Wheat field card'],
  ['wheat stamp', 'Seed packet keeper'],
  ['clothespin', 'Seed packet keeper'],
  ['bone folder', 'Seed packet keeper'],
  ['shortbred', 'Shortbread gift tray'],
  ['thank you', 'Three-layer thank-you card'],
  ['beginner', 'Oak leaf bookmark'],
  ['bulbs', 'Bulb box in two sizes'],
  ['handout', undefined],
  ['sheet music', undefined],
  ['letter', 'Paperback gift bag'],
  ['zeppelin', undefined],
];

const titles = (page: Page): Promise<string[]> =>
  page.evaluate(`[...document.querySelectorAll('.card')].filter((card) => card.checkVisibility())
    .map((card) => card.querySelector('h3').textContent)`) as Promise<string[]>;

describe('the search', () => {
  it('finds by stems and near misses, and not by the words of links', async () => {
    const { page, complaints } = await visit('index.html', { width: 1280 });
    await page.focus('#find-text');
    await page.waitForFunction('globalThis.sheetwright.found');
    const amiss: string[] = [];
    for (const [query, wanted] of QUERIES) {
      await page.evaluate(
        `{ const field = document.querySelector('#find-text'); field.value = ${JSON.stringify(query)}; field.dispatchEvent(new Event('input', { bubbles: true })); }`,
      );
      const found = await titles(page);
      if (wanted === undefined ? found.length > 0 : !found.includes(wanted))
        amiss.push(`${query}: ${found.join(', ')}`);
      // Of the words of links only a near miss of another word may be left.
      if (query === 'letter' && found.length > 2) amiss.push(`${query}: ${found.join(', ')}`);
      if (found.length > 20) amiss.push(`${query} finds everything`);
    }
    expect(amiss).toEqual([]);
    expect(complaints).toEqual([]);
  });

  it('is loaded when it is used, and not before', async () => {
    const { page, requests } = await visit('index.html', { width: 390 });
    expect(requests.filter((address) => address.includes('search-'))).toEqual([]);
    await page.focus('#find-text');
    await page.waitForFunction('globalThis.sheetwright.found');
    expect(requests.filter((address) => address.includes('search-'))).toHaveLength(1);
  });
});

/** A session every week, and as many projects without one. */
const THOUSAND = Array.from({ length: 1000 }, (_, index) =>
  listed(`project-${index}`, {
    title: `Box ${index} for seeds`,
    summary: 'A slim box with a clip-top that holds six packets.',
    tags: ['box', 'garden'],
    minutes: 30 + (index % 4) * 15,
    level: index % 3 === 0 ? 'beginner' : 'improver',
    occasion: index % 5 === 0 ? 'Winter gifts' : undefined,
    session: index < 500 ? dateOfDay(dayNumber('2018-01-04') + 7 * index) : undefined,
    picture: {
      src: `project-${index}/finished-0123456789.jpg`,
      alternative: 'The box, closed.',
      width: 480,
      height: 360,
      drawn: false,
    },
    papers: ['letter', 'a4', 'large-print'].map((paper) => ({
      line: 'site-handout',
      paper: `site-paper-${paper}`,
      href: `project-${index}/project-${index}-${paper}.pdf`,
    })),
    parts: ['Front', 'Label', `Paper ${index}`, 'Bone folder', 'Double-sided tape'],
  }),
);

/** Writes the site's own pages of so many projects. @returns the folder. */
function writeSite(projects: readonly ListedProject[]): string {
  const folder = mkdtempSync(join(inject('temporary'), 'many-'));
  const files = readPackageFiles();
  const site = siteOf('title: The archive');
  const pages = pagesAt('', { site, labels, files, renderer: createRenderer(files) }, 'list');
  const search = searchAsset(projects, { files, labels });
  const links = {
    calendar: undefined,
    feed: 'feed.xml',
    search: `assets/${search.name}`,
    linkPicture: 'assets/preview.png',
  };
  mkdirSync(join(folder, 'assets'));
  writeFileSync(join(folder, 'index.html'), indexHtml(projects, TODAY, pages, links));
  const shelves = shelvesOf(projects);
  for (const shelf of shelves) writeFileSync(join(folder, shelf.path), shelfHtml(shelf, shelves, pages));
  for (const { name, bytes } of [search, ...siteAssets(files)])
    writeFileSync(join(folder, 'assets', name), bytes);
  return folder;
}

describe('a thousand projects', () => {
  let folder = '';
  beforeAll(() => {
    folder = writeSite(THOUSAND);
  });

  const open = (path: string, width: number, scripts = true): ReturnType<typeof visitAt> =>
    visitAt(`${pathToFileURL(folder).href}/${path}`, { width, scripts, today: TODAY });

  it('weigh less than 300 KB a page, and so does what they are searched in', () => {
    const sizes = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.html$|search-/u.test(name))
      .map((name) => [name, statSync(join(folder, name)).size] as const);
    expect(sizes.length).toBeGreaterThan(15);
    expect(sizes.filter(([, size]) => size > 300_000)).toEqual([]);
  });

  it('are all reached without a script, from shelf to shelf', async () => {
    const { page } = await open('index.html', 390, false);
    const links = (await page.$$eval('.shelves a', (all) =>
      all.map((link) => link.getAttribute('href')),
    )) as string[];
    expect(links.slice(0, 3)).toEqual(['2027.html', '2026.html', '2025.html']);
    const reached = new Set<string>();
    for (const link of links) {
      const text = readFileSync(join(folder, link), 'utf8');
      for (const [, slug = ''] of text.matchAll(/<h3><a href="([^"/]+)\//gu)) reached.add(slug);
    }
    expect(reached.size).toBe(1000);
    await page.goto(`${pathToFileURL(folder).href}/2026.html`);
    expect(await page.$eval('[aria-current]', (link) => link.textContent)).toBe('2026');
    expect(await page.$eval('[rel="next"]', (link) => link.getAttribute('href'))).toBe('2025.html');
    expect(await page.evaluate('document.documentElement.scrollWidth <= innerWidth')).toBe(true);
  });

  it('are found on whatever shelf they are, by words and by choices', async () => {
    const { page } = await open('index.html#q=box+7&sort=title', 1280);
    await page.waitForFunction(`document.querySelector('.results .card')`);
    const found = await titles(page);
    expect(found).toContain('Box 7 for seeds');
    expect(found.length).toBeLessThan(130);
    const card = await page.$$eval(
      '.results .card',
      (all) => all.find((each) => each.querySelector('h3')?.textContent === 'Box 7 for seeds')?.textContent,
    );
    expect(card).toContain('Thursday, February 22, 2018');
    expect(card).toContain('1\u00a0hour 15\u00a0minutes · improver');
    await page.select('#find-year', '2018');
    await page.select('#find-occasion', 'Winter gifts');
    expect(await titles(page)).toEqual([]);
    expect(await page.$$eval('.nothing button', (ways) => ways.map((way) => way.textContent))).toContain(
      'Any occasion (1)',
    );
  });

  it('takes less than 50 ms a key', async () => {
    const { page } = await open('index.html', 390);
    await page.focus('#find-text');
    await page.waitForFunction('globalThis.sheetwright.found?.rows.length === 1000');
    const times = (await page.evaluate(`[...'seed packet', ...'bxo 12'].map((key) => {
      const field = document.querySelector('#find-text');
      const begun = performance.now();
      field.value += key;
      field.dispatchEvent(new Event('input', { bubbles: true }));
      return performance.now() - begun;
    })`)) as number[];
    // The median: other tests have the same two cores.
    expect(times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)]).toBeLessThan(50);
  });
});
