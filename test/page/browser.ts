import type { Page, Viewport } from 'puppeteer-core';
import { firstThatStarts, sources } from '../../src/print/find-browser.ts';
import { launch, type Running } from '../../src/print/launch.ts';
import { realSurroundings } from '../../src/print/surroundings.ts';

/** The browser that would print, to look at pages with. */
export function openBrowser(): Promise<Running> {
  const surroundings = realSurroundings();
  return firstThatStarts(
    sources({ download: false, onDownload: () => {} }, surroundings),
    (candidate) => launch(candidate, { surroundings, timeout: 30_000, hosts: ['127.0.0.1'] }),
    surroundings,
  );
}

export type Circumstances = {
  readonly width: number;
  readonly scripts?: boolean;
  readonly reducedMotion?: boolean;
  readonly touch?: boolean;
  /** The reader's day, `YYYY-MM-DD`, at noon; else the clock's. */
  readonly today?: string | undefined;
  readonly scheme?: 'light' | 'dark';
  /** The reader's language, `en-US`; else the browser's. */
  readonly language?: string | undefined;
};

/** A page as a reader has it before them, with all that it complained of and all that it asked for. */
export type OpenPage = { readonly page: Page; readonly complaints: string[]; readonly requests: string[] };

/** Opens a page from its address and waits until its scripts have drawn. */
export async function openPage(
  { browser }: Running,
  address: string,
  {
    width,
    scripts = true,
    reducedMotion = false,
    touch = false,
    today,
    scheme = 'light',
    language,
  }: Circumstances,
): Promise<OpenPage> {
  const page = await browser.newPage();
  const complaints: string[] = [];
  const requests: string[] = [];
  page.on('console', (message) => {
    if (['error', 'warn'].includes(message.type())) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('requestfailed', (request) => complaints.push(`could not load ${request.url()}`));
  page.on('request', (request) => requests.push(request.url()));
  const viewport: Viewport = { width, height: 900, hasTouch: touch, isMobile: touch };
  await page.setViewport(viewport);
  await page.setJavaScriptEnabled(scripts);
  const motion = reducedMotion ? 'reduce' : 'no-preference';
  await page.emulateMediaFeatures([
    { name: 'prefers-reduced-motion', value: motion },
    { name: 'prefers-color-scheme', value: scheme },
  ]);
  if (language !== undefined) {
    await page.evaluateOnNewDocument(
      `Object.defineProperty(navigator, 'language', { value: '${language}' })`,
    );
  }
  if (today !== undefined) {
    await page.evaluateOnNewDocument(
      `const Clock = Date; globalThis.Date = class extends Clock {
        constructor(...parts) { if (parts.length === 0) super('${today}T12:00:00'); else super(...parts); } }`,
    );
  }
  await page.goto(address, { waitUntil: 'load' });
  if (scripts) await frames(page);
  return { page, complaints, requests };
}

/** Waits until what was asked for has been drawn. */
export async function frames(page: Page): Promise<void> {
  await page.evaluate('new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)))');
}
