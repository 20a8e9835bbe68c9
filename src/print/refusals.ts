import type { Page } from 'puppeteer-core';
import { PrintFault } from './fault.ts';

/** What a page asked for outside itself, all of it refused. */
export type Refusals = {
  forget(): void;
  /** @param what What the page is called. @throws PrintFault when anything was refused since the last `forget`. */
  assertNone(what: string): Promise<void>;
};

/** Addresses that are in the page itself. */
const INSIDE = /^(?:data|about):/iu;

/** How Chromium reports a file that a page may not read; no request is made that could be intercepted. */
const REFUSED_FILE = /Not allowed to load local resource: (\S+)/u;

/** Refuses every request of a page that leaves it. */
async function refuse(page: Page, note: (address: string) => void): Promise<void> {
  page.on('request', (request) => {
    const inside = INSIDE.test(request.url());
    if (!inside) note(request.url());
    // A page that was closed meanwhile cannot be answered, and need not be.
    (inside ? request.continue() : request.abort('blockedbyclient')).catch(() => {});
  });
  await page.setRequestInterception(true);
}

/** From now on refuses whatever the page asks for outside itself, and keeps the addresses. */
export async function refuseRequests(page: Page): Promise<Refusals> {
  const addresses = new Set<string>();
  const note = (address: string): void => {
    if (!INSIDE.test(address)) addresses.add(address);
  };
  await refuse(page, note);
  // Interception reports from another process, which may be late. The page's own reports come in the order in which
  // things happened, so that after an answer to any question all that was asked for before is known.
  const session = await page.createCDPSession();
  session.on('Network.requestWillBeSent', ({ request }) => note(request.url));
  session.on('Log.entryAdded', ({ entry }) => {
    const file = REFUSED_FILE.exec(entry.text)?.[1];
    if (file) note(file);
  });
  await session.send('Network.enable');
  await session.send('Log.enable');

  const assertNone = async (what: string): Promise<void> => {
    await session.send('Runtime.evaluate', { expression: '0' });
    const [first, ...others] = addresses;
    if (first === undefined) return;
    const more = others.length > 0 ? ` and ${others.length} more` : '';
    throw new PrintFault(
      'request',
      `${what} asks for ${first}${more}; a page must hold all it shows, since the browser makes no request`,
    );
  };
  return { forget: () => addresses.clear(), assertNone };
}
