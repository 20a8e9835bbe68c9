import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPreview, type Preview } from '../../src/preview/preview.ts';
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

  it('comes anew after a save, and stays where it was scrolled to', async () => {
    await page.evaluate('scrollTo(0, 700)');
    write('title: Card', 'title: A card with another name');
    await page.waitForFunction("document.querySelector('h1')?.textContent.includes('another name')");
    // The longer title takes a line more; the browser keeps what is read in place.
    await page.waitForFunction('Math.abs(scrollY - 700) < 80');
  });

  it('shows what was found at its line and column over the last good page, and takes it away again', async () => {
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
