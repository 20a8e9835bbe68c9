import { readdirSync, readFileSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import jsQrPackage from 'jsqr';
import type { Page } from 'puppeteer-core';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { found, openSite, siteFolder, visit } from './made.ts';

openSite();

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const jsQr = jsQrPackage as unknown as typeof jsQrPackage.default;

const PAGES = [
  'index.html',
  'seed-packet-keeper/index.html',
  'pull-out-tag/share/index.html',
  'seed-packet-keeper/share/index.html',
  '404.html',
];
/** A phone, a screen; and the narrowest that WCAG 2.2, 1.4.10 names. */
const WIDTHS = [320, 390, 1280];

type Violation = { readonly id: string; readonly impact: string; readonly targets: readonly string[] };

async function faultsOf(page: Page): Promise<readonly Violation[]> {
  await page.evaluate(axe);
  return (await page.evaluate(`axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] })
    .then(({ violations }) => violations.map(({ id, impact, nodes }) => ({ id, impact, targets: nodes.map(({ target }) => String(target)) })))`)) as Violation[];
}

describe.each(PAGES)('%s', (path) => {
  it.each([390, 1280])('needs no scrolling aside with text twice as large, at %i px', async (width) => {
    const { page } = await visit(path, { width });
    const session = await page.createCDPSession();
    // Twice the size that browsers begin with (WCAG 2.2, 1.4.4).
    await session.send('Page.setFontSizes', { fontSizes: { standard: 32, fixed: 26 } });
    await page.reload();
    expect(await page.evaluate('parseFloat(getComputedStyle(document.documentElement).fontSize)')).toBe(34);
    const wide = (await page.evaluate(`document.documentElement.scrollWidth <= innerWidth ? [] :
      [...document.querySelectorAll('body *')].filter((each) => each.getBoundingClientRect().right > innerWidth + 1)
        .map((each) => each.localName + '.' + each.className)`)) as string[];
    expect(wide).toEqual([]);
  });

  it('has no fault that axe-core finds in the dark', async () => {
    const { page } = await visit(path, { width: 390, scheme: 'dark' });
    expect(await faultsOf(page)).toEqual([]);
  });

  it.each(WIDTHS)(
    'has no fault that axe-core finds, and nothing to scroll aside, at %i px',
    async (width) => {
      const { page, complaints } = await visit(path, { width, touch: width < 500 });
      expect(await page.evaluate('document.documentElement.scrollWidth <= innerWidth')).toBe(true);
      expect(complaints).toEqual([]);
      expect(await faultsOf(page)).toEqual([]);
    },
  );
});

describe('the list', () => {
  it('never crops a drawing', async () => {
    const { page } = await visit('index.html', { width: 1280 });
    const fits = (await page.evaluate(`[...document.querySelectorAll('.shown')].map((place) =>
      [place.className.includes('drawn'), place.innerHTML.includes('.svg'), getComputedStyle(place.querySelector('img')).objectFit])`)) as [
      boolean,
      boolean,
      string,
    ][];
    // One picture for every project of the demo, and the next session's once more: on top, and among what is searched.
    const sheets = readdirSync('projects', { recursive: true, encoding: 'utf8' });
    expect(fits.length).toBe(sheets.filter((path) => basename(path) === 'sheet.md').length + 1);
    expect(fits.filter(([, svg]) => svg).every(([drawn, , fit]) => drawn && fit === 'contain')).toBe(true);
    expect(fits.filter(([, svg]) => !svg).every(([drawn, , fit]) => !drawn && fit === 'cover')).toBe(true);
    expect(new Set(fits.map(([, svg]) => svg)).size).toBe(2);
  });

  it('is printed without its form, no card torn', async () => {
    const { page } = await visit('index.html', { width: 800 });
    await page.emulateMediaType('print');
    const printed = (await page.evaluate(`({
      controls: [...document.querySelectorAll('form, button, select, input')].filter((each) => each.checkVisibility()).length,
      breaks: [...new Set([...document.querySelectorAll('.card')].map((card) => getComputedStyle(card).breakInside))],
    })`)) as object;
    expect(printed).toEqual({ controls: 0, breaks: ['avoid'] });
  });

  it('is printed as a sheet with no step torn from its heading', async () => {
    const { page } = await visit('seed-packet-keeper/index.html', { width: 800 });
    await page.emulateMediaType('print');
    const breaks = (await page.evaluate(
      `[...document.querySelectorAll('.turns, .step')].map((part) => getComputedStyle(part).breakInside)`,
    )) as readonly string[];
    expect(breaks.length).toBeGreaterThan(4);
    expect(new Set(breaks)).toEqual(new Set(['avoid']));
    expect(await page.$eval('.more', (more) => more.checkVisibility())).toBe(false);
  });

  it('is set in its own letters where a page is not found', async () => {
    const { page, requests } = await visit('404.html', { width: 390 });
    await page.evaluate('document.fonts.ready');
    expect(await page.evaluate(`document.fonts.check('20px "Public Sans"') && document.fonts.size`)).toBe(1);
    expect(await page.$eval('link[rel="icon"]', (icon) => icon.getAttribute('href'))).toMatch(/^data:image/u);
    expect(requests.filter((address) => !address.startsWith('data:'))).toHaveLength(1);
  });

  it.each([390, 1280])('has links large enough for a finger at %i px', async (width) => {
    // WCAG 2.2, 2.5.8: 24 by 24 CSS pixels.
    const { page } = await visit('index.html', { width });
    const small = (await page.$$eval('main a, main button, main input, main select', (targets) =>
      targets
        .filter((target) => target.checkVisibility())
        .map((target) => [target.textContent, target.getBoundingClientRect()] as const)
        .filter(([, { width, height }]) => width < 24 || height < 24)
        .map(([text, { width, height }]) => `${text}: ${width} × ${height}`),
    )) as string[];
    expect(small).toEqual([]);
  });
});

describe('what a page weighs before anybody touches it', () => {
  /** Bytes of styles and scripts that every page had before it had class mode, a search and a way to be kept. */
  const BEFORE = 56_200;
  /** What a sheet may have for these. */
  const MOST = BEFORE + 15_000;

  it.each([
    ['index.html', BEFORE],
    ['seed-packet-keeper/index.html', MOST],
    ['bulb-box/index.html', MOST],
    ['seed-packet-keeper/share/index.html', BEFORE],
    ['404.html', 0],
  ])('%s', async (path, most) => {
    const { requests } = await visit(path, { width: 390 });
    const files = requests
      .filter((address) => /^file:.*\.(?:css|js)$/u.test(address))
      .map((file) => fileURLToPath(file));
    const bytes = files.reduce((sum, file) => sum + statSync(file).size, 0);
    expect(bytes).toBeLessThanOrEqual(most);
    expect(files.length > 1).toBe(most > 0);
  });

  it('is little where a page was not found, which brings all it has', () => {
    expect(statSync(join(siteFolder(), '404.html')).size).toBeLessThan(36_000);
  });
});

describe('the page for sharing', () => {
  const path = 'seed-packet-keeper/share/index.html';

  it('shows a QR code that another library reads off the screen', async () => {
    const { page } = await visit(path, { width: 390 });
    const png = await (await found(page, '.code .qr')).screenshot();
    const { data, info } = await sharp(png).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
    expect(jsQr(new Uint8ClampedArray(data), info.width, info.height)?.data).toBe(
      'https://example.org/bench/seed-packet-keeper/',
    );
  });

  it('copies its text at a press, and says so', async () => {
    const { page } = await visit(path, { width: 390 });
    const text = await page.$eval('#share-text', (field) => field.textContent);
    expect(text).toBe(`Seed packet keeper
A slim box with a clip-top that holds six seed packets.
Thursday, December\u00a010,\u00a02026, 6:30\u00a0PM\u00a0CST
Reading room, Harbour Street Library
https://example.org/bench/seed-packet-keeper/`);
    await page.evaluate(
      `globalThis.copied = ''; navigator.clipboard.writeText = async (text) => { copied = text; }`,
    );
    await page.click('[data-copies="share-text"]');
    await page.waitForFunction(`document.querySelector('.copy [role="status"]').textContent === 'Copied.'`);
    expect(await page.evaluate('copied')).toBe(text);
  });

  it('says so when copying is forbidden, with the text selected', async () => {
    const { page } = await visit(path, { width: 390 });
    await page.evaluate(
      `navigator.clipboard.writeText = () => Promise.reject(new Error()); document.execCommand = () => false`,
    );
    await page.click('[data-copies="share-text"]');
    await page.waitForFunction(
      `document.querySelector('.copy [role="status"]').textContent.startsWith('Copying failed')`,
    );
    expect(await page.evaluate('getSelection().toString()')).toContain('Seed packet keeper');
  });

  it('has its text to select by hand without scripts', async () => {
    const { page } = await visit(path, { width: 390, scripts: false });
    expect(await page.$eval('[data-copies]', (button) => button.checkVisibility())).toBe(false);
    expect(await page.$eval('#share-text', (field) => field.checkVisibility())).toBe(true);
  });
});
