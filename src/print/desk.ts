import type { Browser, Page } from 'puppeteer-core';
import { PrintFault } from './fault.ts';

/** The one page of a browser, on which sheet after sheet is laid out. */
export type Desk = {
  readonly page: Page;
  /** Rejects when the page's own process dies. */
  readonly crashed: Promise<never>;
  hasCrashed(): boolean;
  /**
   * Lays out a whole HTML document and waits for its pictures and fonts, including those that only margins use.
   * @param what What it is called in messages.
   * @throws PrintFault when the page asks for anything outside itself or brings a font that cannot be read.
   */
  lay(html: string, what: string): Promise<void>;
  /** @throws PrintFault when the page asked for anything outside itself since it was laid out. */
  assertSelfContained(what: string): void;
};

/** Addresses that are in the page itself. */
const INSIDE = /^(?:data|about):/iu;

/** How Chromium reports a file that a page may not read; no request is made that could be intercepted. */
const REFUSED_FILE = /Not allowed to load local resource: (\S+)/u;

/** Loads every font the page brings, used or not: some are asked for only while printing, which does not wait. */
const SETTLE = `Promise.allSettled([...document.fonts].map((font) => font.load()))
  .then(() => document.fonts.ready)
  .then(() => [...document.fonts].filter(({ status }) => status === 'error'))
  .then((broken) => broken.map(({ family, weight, style }) => [family, weight, style].join(' ')))`;

/** Refuses every request of a page that leaves it. @returns The addresses refused, as they come. */
async function refuseRequests(page: Page): Promise<string[]> {
  const refused: string[] = [];
  page.on('request', (request) => {
    const inside = INSIDE.test(request.url());
    if (!inside) refused.push(request.url());
    // A page that was closed meanwhile cannot be answered, and need not be.
    (inside ? request.continue() : request.abort('blockedbyclient')).catch(() => {});
  });
  page.on('console', (message) => {
    const file = REFUSED_FILE.exec(message.text())?.[1];
    if (file) refused.push(file);
  });
  await page.setRequestInterception(true);
  return refused;
}

async function settle(page: Page, html: string): Promise<string[]> {
  await page.setContent(html, { waitUntil: 'load' });
  return (await page.evaluate(SETTLE)) as string[];
}

/** Makes a browser's page ready: scripts are off, nothing is requested. */
export async function openDesk(browser: Browser): Promise<Desk> {
  const page = (await browser.pages())[0] ?? (await browser.newPage());
  const crashed = new Promise<never>((_, reject) => page.once('error', reject));
  let hasCrashed = false;
  crashed.catch(() => {
    hasCrashed = true;
  });
  // How long a page may take is for the printer to say.
  page.setDefaultTimeout(0);
  await page.setJavaScriptEnabled(false);
  const refused = await refuseRequests(page);

  const assertSelfContained = (what: string): void => {
    const [first, ...others] = refused;
    if (first === undefined) return;
    const more = others.length > 0 ? ` and ${others.length} more` : '';
    throw new PrintFault(
      'request',
      `${what} asks for ${first}${more}; a page must hold all it shows, since the browser makes no request`,
    );
  };
  const lay = async (html: string, what: string): Promise<void> => {
    refused.length = 0;
    // A page that goes elsewhere breaks off the settling; the address it went for is then the better message.
    const broken = await settle(page, html).finally(() => assertSelfContained(what));
    if (broken.length > 0)
      throw new PrintFault('font', `${what} brings a font that cannot be read: ${broken[0]}`);
  };
  return { page, crashed, hasCrashed: () => hasCrashed, lay, assertSelfContained };
}
