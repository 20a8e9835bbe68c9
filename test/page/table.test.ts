import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import type { Page } from 'puppeteer-core';
import { afterAll, describe, expect, it } from 'vitest';
import { openSite, siteFolder, visit, visitAt } from '../site/made.ts';

openSite();

const PATH = 'seed-packet-keeper/index.html';
const seen = (page: Page, selector: string): Promise<boolean> =>
  page.$eval(selector, (element) => element.checkVisibility());

describe('the bar of a sheet', () => {
  it('stays at hand on a phone, and leads to the parts', async () => {
    const { page } = await visit(PATH, { width: 390, touch: true });
    await page.click('.bar a[href="#steps"]');
    await page.waitForFunction('scrollY > 1000');
    const [bar, heading] = (await page.evaluate(
      `['.bar', '#steps'].map((selector) => document.querySelector(selector).getBoundingClientRect().top)`,
    )) as [number, number];
    expect(bar).toBeLessThan(2);
    expect(heading).toBeGreaterThan(bar);
    expect(heading).toBeLessThan(300);
  });

  it('says what is done, folds it away, and begins anew', async () => {
    const { page } = await visit(PATH, { width: 390 });
    const steps = (await page.$$('.step')).length;
    const told = (): Promise<string | null> =>
      page.$eval('.progress [role="status"]', (line) => line.textContent);
    expect(await told()).toBe(`0 of ${steps} done`);
    expect(await seen(page, '.reset')).toBe(false);
    await page.click('#step-1-done');
    expect(await told()).toBe(`1 of ${steps} done`);
    expect(await seen(page, '#step-1 .step-body')).toBe(false);
    expect(await seen(page, '#step-2 .step-body')).toBe(true);
    await page.click('.reset');
    expect(await told()).toBe(`0 of ${steps} done`);
    expect(await seen(page, '#step-1 .step-body')).toBe(true);
  });
});

describe('one step at a time', () => {
  it('goes by the keyboard alone, and keeps the screen awake', async () => {
    const { page, complaints } = await visit(PATH, { width: 390 });
    await page.evaluate(`globalThis.asked = [];
      Object.defineProperty(navigator, 'wakeLock', { value: { request: async (what) => { asked.push(what); return { release() { asked.push('release'); } }; } } })`);
    await page.focus('.class-open');
    await page.keyboard.press('Enter');
    const shown = (): Promise<unknown> =>
      page.evaluate(
        `[...document.querySelectorAll('.step')].filter((step) => step.checkVisibility()).map(({ id }) => id)`,
      );
    expect(await shown()).toEqual(['step-1']);
    expect(await seen(page, '.masthead')).toBe(false);
    await page.keyboard.press('ArrowRight');
    expect(await shown()).toEqual(['step-2']);
    await page.keyboard.press('Enter');
    expect(await shown()).toEqual(['step-3']);
    await page.keyboard.press('ArrowLeft');
    expect(await shown()).toEqual(['step-2']);
    expect(await page.$eval('.class-bar [role="status"]', (line) => line.textContent)).toMatch(
      /^Step 2 of \d$/u,
    );
    const steps = await page.$$eval('.step', (all) => all.map(({ id }) => id));
    for (const _ of steps) await page.keyboard.press('ArrowRight');
    expect(await shown()).toEqual(steps.slice(-1));
    expect(await page.evaluate('document.activeElement.className')).toContain('class-close');
    await page.keyboard.press('Escape');
    expect(await seen(page, '.masthead')).toBe(true);
    expect(await page.evaluate('document.activeElement.className')).toContain('class-open');
    expect(await page.evaluate('asked')).toEqual(['screen', 'release']);
    expect(complaints).toEqual([]);
  });

  it('fits a phone, and begins with the first step that is not done', async () => {
    const { page } = await visit(PATH, { width: 390, touch: true });
    await page.click('#step-1-done');
    await page.click('.class-open');
    expect(await page.$eval('[data-now]', ({ id }) => id)).toBe('step-2');
    expect(await page.evaluate('document.documentElement.scrollWidth <= innerWidth')).toBe(true);
  });

  it('counts down what dries, and says when it is dry', async () => {
    const { page } = await visit(PATH, { width: 390 });
    await page.evaluate(
      `Object.assign(globalThis, { Now: Date.now, ahead: 0 }); Date.now = () => Now() + ahead`,
    );
    await page.click('.timer');
    await page.waitForFunction(`/^[23]:\\d\\d$/.test(document.querySelector('.timer').textContent)`);
    await page.evaluate('ahead = 3 * 60_000');
    await page.waitForFunction(`document.querySelector('.timer').textContent === 'Dry'`);
  });
});

describe('a drawing', () => {
  it('is enlarged at a tap or by Enter, and let go by Escape', async () => {
    const { page, complaints } = await visit(PATH, { width: 390, touch: true });
    const width = await page.$eval('.net svg', (svg) => svg.getBoundingClientRect().width);
    for (const ask of [
      async () => {
        // A busy machine may hold a tap so long that it counts as another gesture.
        const isTapped = async (): Promise<boolean> => {
          await page.tap('.net svg');
          const opened = page.waitForSelector('.enlarged[open]', { timeout: 3000 });
          return opened.then(Boolean, () => false);
        };
        for (let taps = 1; !(await isTapped()); taps += 1) expect(taps).toBeLessThan(9);
      },
      async () => {
        await page.focus('.net .enlarge');
        await page.keyboard.press('Enter');
      },
    ]) {
      await ask();
      await page.waitForSelector('.enlarged[open] svg');
      const large = await page.$eval('.enlarged svg', (svg) => svg.getBoundingClientRect().width);
      expect(large).toBeGreaterThan(width * 1.5);
      await page.keyboard.press('Escape');
      await page.waitForFunction(`!document.querySelector('.enlarged').open`);
    }
    expect(complaints).toEqual([]);
  });

  it.each([
    ['in', 'mm'],
    ['mm', 'in'],
  ])('measures in %s alone where the reader chose so, in large weight', async (chosen, other) => {
    const { page } = await visit(PATH, { width: 1280 });
    const warnsOfTwo = (): Promise<boolean> =>
      page.$eval('.cut .how [data-unit="both"]', (words) => words.checkVisibility());
    await page.click('.units input[value="both"]');
    expect(await warnsOfTwo()).toBe(true);
    await page.click(`.units input[value="${chosen}"]`);
    expect(await warnsOfTwo()).toBe(false);
    await page.click('.net .enlarge');
    const weights = (await page.evaluate(`['${chosen}', '${other}', 'both'].map((unit) =>
      [...document.querySelectorAll('svg [data-unit="' + unit + '"]')].map((line) => {
        const { display, fontWeight } = getComputedStyle(line);
        return display === 'none' ? 'hidden' : fontWeight;
      }))`)) as readonly string[][];
    expect(weights.map((each) => [...new Set(each)])).toEqual([['600'], ['hidden'], ['hidden']]);
    expect(await page.$eval(`.enlarged [data-unit="${chosen}"]`, (line) => line.checkVisibility())).toBe(
      true,
    );
  });

  it('shows one system of measurement alone where a project has several sizes, too', async () => {
    const { page } = await visit('bulb-box/index.html', { width: 390 });
    const shown = (unit: string): Promise<number> =>
      page.$$eval(
        `.cut [data-column="${unit}"]`,
        (all) => all.filter((each) => each.checkVisibility()).length,
      );
    await page.click('.units input[value="both"]');
    expect(Math.min(await shown('in'), await shown('mm'))).toBeGreaterThan(6);
    await page.click('.units input[value="in"]');
    expect([(await shown('in')) > 6, await shown('mm')]).toEqual([true, 0]);
    await page.click('.units input[value="mm"]');
    expect([await shown('in'), (await shown('mm')) > 6]).toEqual([0, true]);
    await page.click('.units input[value="both"]');
  });

  it('has no letter under 9 px on a phone', async () => {
    const { page } = await visit(PATH, { width: 390, touch: true });
    const small = (await page.evaluate(`[...document.querySelectorAll('figure.drawing text, .net text')]
      .map((text) => [text.textContent, Number(text.getAttribute('font-size')) * text.ownerSVGElement.getScreenCTM().a])
      .filter(([, size]) => size < 9)`)) as unknown[];
    expect(small).toEqual([]);
  });

  it.each(['dark', 'forced'] as const)('keeps ink on paper where colors are %s', async (colors) => {
    const { page } = await visit(PATH, { width: 390, scheme: 'dark' });
    if (colors === 'forced') {
      const session = await page.createCDPSession();
      await session.send('Emulation.setEmulatedMedia', {
        features: [{ name: 'forced-colors', value: 'active' }],
      });
    }
    const looks = (await page.evaluate(`[...document.querySelectorAll('.drawn')].map((place) => {
      const { backgroundColor, color } = getComputedStyle(place);
      return backgroundColor + ' ' + color;
    })`)) as string[];
    expect(new Set(looks)).toEqual(new Set(['rgb(255, 255, 255) rgb(26, 26, 26)']));
  });
});

describe('the downloads', () => {
  it('lead with the paper of the reader, in one main button', async () => {
    for (const [language, leads] of [
      ['en-US', 'PDF, Letter'],
      ['de-DE', 'PDF, A4'],
      ['en', 'PDF, Letter'],
    ] as const) {
      const { page } = await visit(PATH, { width: 390, language });
      const main = await page.$$eval('.downloads .main', (links) => links.map((link) => link.textContent));
      expect(main).toEqual([leads]);
      expect(await page.$eval('.downloads li', (first) => first.textContent)).toContain(leads);
    }
  });
});

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.css': 'text/css',
  '.js': 'text/javascript',
};

/** The site as a host would serve it, until it is closed. */
async function serve(): Promise<Server> {
  const server = createServer(async ({ url = '/' }, answer) => {
    const path = join(siteFolder(), decodeURIComponent(new URL(url, 'http://site').pathname));
    const bytes = await readFile(path).catch(() => undefined);
    const type = TYPES[extname(path)] ?? 'application/octet-stream';
    answer.writeHead(bytes ? 200 : 404, { 'content-type': type, 'content-length': bytes?.length ?? 0 });
    answer.end(bytes);
  });
  await new Promise<void>((listening) => {
    server.listen(0, '127.0.0.1', listening);
  });
  return server;
}

describe('a page that is kept', () => {
  let server: Server | undefined;
  afterAll(() => server?.close());

  it('is not offered from disk', async () => {
    const { page } = await visit(PATH, { width: 390 });
    expect(await seen(page, '.keep')).toBe(false);
  });

  it('is there when the network is gone, small, and the downloads say their size', async () => {
    server = await serve();
    const { port } = server.address() as AddressInfo;
    const address = `http://127.0.0.1:${port}/${PATH}`;
    const { page } = await visitAt(address, { width: 390 });
    await page.$eval('.downloads', (list) => list.scrollIntoView());
    await page.waitForFunction(
      `/\\((?:\\d+|\\d\\.\\d) (?:kB|MB)\\)/u.test(document.querySelector('.downloads').textContent)`,
    );
    await page.click('.keep');
    await page.waitForFunction(`document.querySelector('.keep').textContent.startsWith('Saved')`);
    const bytes = (await page.evaluate(`(async () => {
      const cache = await caches.open('sheetwright-1');
      const answers = await Promise.all((await cache.keys()).map((each) => cache.match(each)));
      return (await Promise.all(answers.map((each) => each.arrayBuffer()))).reduce((sum, { byteLength }) => sum + byteLength, 0);
    })()`)) as number;
    expect(bytes).toBeLessThan(600_000);
    server.closeAllConnections();
    await new Promise((closed) => server?.close(closed));
    await page.reload({ waitUntil: 'load' });
    expect(await page.$eval('h1', (heading) => heading.textContent)).toBe('Seed packet keeper');
    expect(await page.evaluate(`getComputedStyle(document.querySelector('.bar')).position`)).toBe('sticky');
    // By its other address, too.
    const url = page.url();
    await page.goto(url.endsWith('/') ? `${url}index.html` : url.replace(/index\.html$/u, ''));
    expect(await page.$eval('h1', (heading) => heading.textContent)).toBe('Seed packet keeper');
  });
});
