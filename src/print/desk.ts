import type { Browser, Page } from 'puppeteer-core';
import { PrintFault } from './fault.ts';
import { type Refusals, refuseRequests } from './refusals.ts';

/** The one page of a browser, on which sheet after sheet is laid out. */
export type Desk = {
  readonly page: Page;
  /** Rejects when the page's own process dies. */
  readonly crashed: Promise<never>;
  hasCrashed(): boolean;
  /**
   * Lays out a whole HTML document and waits for its pictures and fonts, including those that only margins use.
   * @param what What it is called in messages.
   * @throws PrintFault when the page asks for anything outside itself or brings a font or picture that cannot be read.
   */
  lay(html: string, what: string, medium: 'print' | 'screen'): Promise<void>;
  /** @throws PrintFault when the page asked for anything outside itself since it was laid out. */
  assertSelfContained(what: string): Promise<void>;
};

/**
 * Sets the page, which asks for what its styles name, and loads every font it brings, used or not: some are asked for
 * only while printing, which does not wait. Gives what of the page's own cannot be read, in words.
 */
const SETTLE = `document.documentElement.offsetHeight, Promise.allSettled([...document.fonts].map((font) => font.load()))
  .then(() => document.fonts.ready)
  .then(() => [
    ...[...document.fonts].filter(({ status }) => status === 'error')
      .map(({ family, weight, style }) => 'font ' + [family, weight, style].join(' ')),
    ...[...document.images].filter(({ src, naturalWidth }) => src !== '' && naturalWidth === 0)
      .map(({ alt }) => 'picture “' + alt + '”'),
  ])`;

async function settle(page: Page, html: string): Promise<string[]> {
  await page.setContent(html, { waitUntil: 'load' });
  return (await page.evaluate(SETTLE)) as string[];
}

async function layOn(page: Page, refusals: Refusals, html: string, what: string): Promise<void> {
  refusals.forget();
  const [unreadable] = await settle(page, html).catch(async (error: unknown) => {
    // A page that goes elsewhere breaks off the settling; the address it went for is the better message.
    await refusals.assertNone(what);
    throw error;
  });
  await refusals.assertNone(what);
  if (unreadable === undefined) return;
  throw new PrintFault('unreadable', `${what} brings a ${unreadable} that cannot be read`);
}

/** Makes a browser's page ready: scripts are off, nothing is requested. */
export async function openDesk(browser: Browser): Promise<Desk> {
  const page = (await browser.pages())[0] ?? (await browser.newPage());
  let hasCrashed = false;
  const crashed = new Promise<never>((_, reject) => page.once('error', reject));
  crashed.catch(() => {
    hasCrashed = true;
  });
  // How long a page may take is for the printer to say.
  page.setDefaultTimeout(0);
  await page.setJavaScriptEnabled(false);
  const refusals = await refuseRequests(page);
  return {
    page,
    crashed,
    hasCrashed: () => hasCrashed,
    lay: async (html, what, medium) => {
      await page.emulateMediaType(medium);
      await layOn(page, refusals, html, what);
    },
    assertSelfContained: (what) => refusals.assertNone(what),
  };
}
