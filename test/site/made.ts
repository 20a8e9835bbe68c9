import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { ElementHandle, Page } from 'puppeteer-core';
import { afterAll, afterEach, beforeAll } from 'vitest';
import type { Running } from '../../src/print/launch.ts';
import { madeDemo, TODAY } from '../made-demo.ts';
import { type Circumstances, type OpenPage, openBrowser, openPage } from '../page/browser.ts';

let browser: Running;
let folder = '';
const open: Page[] = [];

/** Opens the demo's site, on disk, for the tests of one file. */
export function openSite(): void {
  beforeAll(async () => {
    folder = join(await madeDemo(), 'dist/site');
    browser = await openBrowser();
  }, 600_000);

  afterEach(async () => {
    for (const page of open.splice(0)) await page.close();
  });

  afterAll(() => browser?.stop());
}

export function siteFolder(): string {
  return folder;
}

/** A page of the site as a reader opens it from disk. */
export async function visit(path: string, circumstances: Circumstances): Promise<OpenPage> {
  const today = circumstances.today ?? TODAY;
  return visitAt(`${pathToFileURL(folder).href}/${path}`, { ...circumstances, today });
}

/** A page by its whole address. */
export async function visitAt(address: string, circumstances: Circumstances): Promise<OpenPage> {
  const visited = await openPage(browser, address, circumstances);
  open.push(visited.page);
  return visited;
}

export async function found(page: Page, selector: string): Promise<ElementHandle> {
  const element = await page.$(selector);
  if (!element) throw new Error(`there is no ${selector}`);
  return element;
}
