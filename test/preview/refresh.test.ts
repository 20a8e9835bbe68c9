import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { openPreview } from '../../src/preview/preview.ts';
import type { Preview } from '../../src/preview/preview-options.ts';
import type { Running } from '../../src/print/launch.ts';
import { emptyFolder, sheetwright } from '../cli/terminal.ts';
import { openBrowser } from '../page/browser.ts';

describe('a previewed page', () => {
  let browser: Running;
  let preview: Preview;
  let sheet = '';
  let page: Page;
  const errors: string[] = [];

  beforeAll(async () => {
    const folder = emptyFolder();
    await sheetwright(folder, 'draft', 'card');
    sheet = join(folder, 'projects/card/sheet.md');
    preview = await openPreview({
      root: join(folder, 'projects'),
      out: join(folder, 'dist/preview'),
      namedFrom: folder,
      today: '2026-12-01',
      port: 0,
      told: () => {},
    });
    browser = await openBrowser();
    page = await browser.browser.newPage();
    page.on('pageerror', (error) => errors.push(String(error)));
    await page.setViewport({ width: 390, height: 600 });
    await page.goto(`${preview.address}card/`);
    await page.waitForSelector('#preview-findings');
  });

  afterAll(async () => {
    await preview.close();
    await browser.stop();
  });

  const write = (from: string | RegExp, to: string): void =>
    writeFileSync(sheet, readFileSync(sheet, 'utf8').replace(from, to));
  const textOf = (selector: string): Promise<string> =>
    page.$eval(selector, (element) => element.textContent ?? '');

  it('says that it is not published yet', async () => {
    expect(await textOf('#preview-findings')).toMatch(/draft[\s\S]*never published/u);
  });

  it('is brought on in place after a save: not loaded anew, ticked and scrolled as it was', async () => {
    await page.evaluate('globalThis.isSamePage = true');
    await page.click('[data-tick="step"]');
    await page.evaluate('scrollTo(0, 700)');
    write('title: Card', 'title: A card with another name');
    await page.waitForFunction("document.querySelector('h1')?.textContent.includes('another name')");
    // The longer title takes a line more; the browser keeps what is read in place.
    await page.waitForFunction('Math.abs(scrollY - 700) < 80');
    expect(await page.title()).toContain('another name');
    write(/(\n## [^\n]*\n)/u, '$1A sentence *more* before it.\n\n');
    await page.waitForFunction("document.querySelector('.step .prose em')?.textContent === 'more'");
    write('4 x 5 1/4', '4 x 5');
    await page.waitForFunction("/4 × 5 in/.test(document.querySelector('.cut-list')?.textContent)");
    expect(await page.evaluate('globalThis.isSamePage')).toBe(true);
    expect(await page.$('[data-tick="step"]:checked')).not.toBe(null);
    write('4 x 5,', '4 x 5 1/4,');
  });

  it('shows pictures that are painted after the page, and those that are others under the same name', async () => {
    const share = await browser.browser.newPage();
    await share.goto(`${preview.address}card/share/`);
    /** What each picture shows; none before all are there. */
    const painted = (): Promise<unknown> =>
      share.evaluate(`Promise.all([...document.images].map(async (picture) => {
        picture.loading = 'eager';
        await picture.decode();
        const canvas = Object.assign(document.createElement('canvas'), { width: 90, height: 90 });
        canvas.getContext('2d').drawImage(picture, 0, 0, 90, 90);
        return canvas.toDataURL();
      })).catch(() => [])`);
    const others = (before: readonly string[]): Promise<readonly string[]> =>
      vi.waitFor(
        async () => {
          const now = (await painted()) as readonly string[];
          expect(now).toHaveLength(3);
          for (const picture of now) expect(before).not.toContain(picture);
          return now;
        },
        { timeout: 10_000, interval: 200 },
      );
    const before = await others([]);
    write('title: A card with another name', 'title: A card with another name than that');
    await others(before);
    await share.close();
  });

  it('is loaded anew where its scripts hold on to what changed, and stays where it was scrolled to', async () => {
    const steps = await page.$$eval('.step', ({ length }) => length);
    await page.evaluate('scrollTo(0, 400)');
    writeFileSync(sheet, `${readFileSync(sheet, 'utf8')}\n## One step more\nAdmire it.\n`);
    await page.waitForFunction(`document.querySelectorAll('.step').length === ${steps + 1}`);
    await page.waitForFunction('Math.abs(scrollY - 400) < 80');
    await page.waitForFunction("document.querySelector('#preview-findings')");
    expect(await page.evaluate('globalThis.isSamePage')).toBe(undefined);
  });

  it('shows a finding as a terminal does, marks what it is about, and leads to the line in an editor', async () => {
    write('4 x 5 1/4', '4 x 5 1/0');
    await page.waitForSelector('#preview-findings pre');
    expect(await textOf('#preview-findings pre')).toMatch(/^.*4 x 5 1\/0.*\n *\^{5}$/u);
    expect(await textOf('.preview-mark')).toContain('front');
    const [words, carets] = (await page.evaluate(`(() => {
      const { firstChild, lastChild } = document.querySelector('#preview-findings pre');
      return [[firstChild, '5 1/0'], [lastChild.firstChild, '^']].map(([node, words]) => {
        const range = new Range();
        range.setStart(node, node.data.indexOf(words));
        range.setEnd(node, range.startOffset + 1);
        return range.getBoundingClientRect().left;
      });
    })()`)) as [number, number];
    expect(Math.abs(words - carets)).toBeLessThan(1);
    // What covers the page on a phone makes way for what it shows there.
    await page.click('#preview-findings button');
    expect(await page.$eval('#preview-findings', (panel) => panel.hasAttribute('open'))).toBe(false);
    expect(await page.$('#preview-findings a')).toBe(null);
    const line = readFileSync(sheet, 'utf8').split('5 1/0')[0]?.split('\n').length;
    writeFileSync(join(sheet, '../../site.yaml'), 'editor: "my-editor://open?at={file}&line={line}"\n');
    await page.waitForSelector('#preview-findings a');
    const href = await page.$eval('#preview-findings a', (link) => link.getAttribute('href'));
    expect(href).toBe(`my-editor://open?at=${encodeURI(sheet)}&line=${line}`);
    write('4 x 5 1/0', '4 x 5 1/4');
    await page.waitForFunction("!document.querySelector('.preview-mark')");
  });

  it('shows what was found over the last good page, and takes it away again', async () => {
    write('4 x 5 1/4', '4 x 5 1/0');
    await page.waitForFunction(
      "document.querySelector('#preview-findings')?.textContent.includes('unreadable-length')",
    );
    expect(await textOf('#preview-findings')).toMatch(/card\/sheet\.md:\d+:\d+/u);
    expect(await textOf('h1')).toContain('another name');
    write('4 x 5 1/0', '4 x 5 1/4');
    await page.waitForFunction(
      "!document.querySelector('#preview-findings')?.textContent.includes('unreadable-length')",
    );
    expect(errors).toEqual([]);
  });
});
