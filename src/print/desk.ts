import type { Browser, BrowserContext, CDPSession, Page } from 'puppeteer-core';
import { PrintFault, UnreadableFont } from './fault.ts';
import { KEPT, KeptFonts, type PageFont } from './kept-fonts.ts';
import { KeptScripts, SCRIPTS } from './kept-scripts.ts';

type Medium = 'print' | 'screen';

/** What a page is laid out with. */
type LayOptions = {
  readonly medium: Medium;
  readonly fonts?: readonly PageFont[] | undefined;
  /** Scripts of ours that run once it is laid out, one after the other. */
  readonly then?: readonly string[];
  /** What it is called from then on. */
  readonly title?: string;
};

/** The one page of a browser, on which sheet after sheet is laid out. */
export type Desk = {
  readonly page: Page;
  /** What the page is told and asked directly. */
  readonly session: CDPSession;
  /** Aborted when the page's own process dies. */
  readonly crashed: AbortSignal;
  /**
   * Lays out a whole HTML document and waits for its pictures and fonts, including those that only margins use.
   * @param what What it is called in messages.
   * @throws PrintFault when the page asks for anything outside itself or brings a font or picture that cannot be read.
   */
  lay(html: string, what: string, layout: LayOptions): Promise<void>;
  /** @throws PrintFault when the page asked for anything outside itself since it was laid out. */
  assertSelfContained(what: string): Promise<void>;
};

/**
 * Sets the page, which asks for what its styles name, waits for its pictures and loads every font it brings, used or not:
 * some are asked for only while printing, which does not wait. Gives what of the page's own cannot be read, in words. Each
 * question to the browser waits until we have time for its answer, so that all is asked in one.
 */
const layingOut = (html: string, before: string, after: string): string => `${before}
  document.open();
  document.write(${JSON.stringify(html)});
  document.close();
  document.documentElement.offsetHeight;
  Promise.allSettled([
    ...[...document.fonts].map((font) => font.load()),
    ...[...document.images].map((image) => image.decode()),
  ])
  .then(() => document.fonts.ready)
  .then(() => {
    const unreadable = [
      ...[...document.fonts].filter(({ status }) => status === 'error')
        .map(({ family, weight, style }) => ({ says: 'font ' + [family, weight, style].join(' '), family: family.replaceAll('"', '') })),
      ...[...document.images].filter(({ src, naturalWidth }) => src !== '' && naturalWidth === 0)
        .map(({ alt }) => ({ says: 'picture “' + alt + '”' })),
    ];
    if (unreadable.length === 0) {
${after}
    }
    return unreadable;
  })`;

/**
 * After documents of so many characters the page is asked to clear away what is left of them; by itself it does so late, and
 * held a thousand megabytes. More often, it would take longer.
 */
const MUCH = 16_000_000;

/** What one of our scripts gives, in the page. @throws What it throws there. */
async function evaluate(session: CDPSession, expression: string): Promise<unknown> {
  const answer = await session.send('Runtime.evaluate', {
    expression,
    awaitPromise: true,
    returnByValue: true,
  });
  const { exceptionDetails: thrown } = answer;
  if (thrown) throw new Error(thrown.exception?.description ?? thrown.text);
  return answer.result.value;
}

async function layOn(session: CDPSession, refusals: Refusals, what: string, script: string): Promise<void> {
  refusals.forget();
  const [unreadable] = (await evaluate(session, script).catch(async (error: unknown) => {
    // A page that goes elsewhere breaks off the settling; the address it went for is the better message.
    await refusals.assertNone(what);
    throw error;
  })) as Unreadable[];
  if (unreadable === undefined) return;
  await refusals.assertNone(what);
  const { says, family } = unreadable;
  const message = `${what} brings a ${says} that cannot be read`;
  throw family === undefined ? new PrintFault(message) : new UnreadableFont(message, family);
}

/** What a page brings and cannot be read, in words; of a font its family. */
type Unreadable = { readonly says: string; readonly family?: string };

/** Makes a page ready, of a browser or of our place in one: scripts are off, nothing is requested. */
export async function openDesk(browser: Browser | BrowserContext): Promise<Desk> {
  const page = (await browser.pages())[0] ?? (await browser.newPage());
  const crash = new AbortController();
  page.once('error', (error) => crash.abort(error));
  // How long a page may take is for the printer to say.
  page.setDefaultTimeout(0);
  await page.setJavaScriptEnabled(false);
  const session = await page.createCDPSession();
  await sendToBack(session);
  const refusals = await refuseRequests(page, session);
  await evaluate(session, `${KEPT};\n${SCRIPTS};`);
  const fontsKept = new KeptFonts();
  const scriptsKept = new KeptScripts();
  let current: Medium | undefined;
  let left = 0;
  return {
    page,
    session,
    crashed: crash.signal,
    lay: async (html, what, { medium, fonts = [], then = [], title }) => {
      if (medium !== current) await page.emulateMediaType(medium);
      current = medium;
      if (left > MUCH) {
        left = 0;
        // A browser that cannot be asked prints as well.
        session.send('HeapProfiler.collectGarbage').catch(() => {});
      }
      left += html.length;
      const before = [fontsKept.show(fonts), scriptsKept.keep(then)].join('\n');
      const named = title === undefined ? '' : `document.title = ${JSON.stringify(title)};`;
      const after = [scriptsKept.run(then), named].join('\n');
      await layOn(session, refusals, what, layingOut(html, before, after));
    },
    assertSelfContained: (what) => refusals.assertNone(what),
  };
}

/** Nobody looks at the page: a window that is put away is not painted, which took a quarter of the browser's work. */
async function sendToBack(session: CDPSession): Promise<void> {
  try {
    const { windowId } = await session.send('Browser.getWindowForTarget');
    await session.send('Browser.setWindowBounds', { windowId, bounds: { windowState: 'minimized' } });
  } catch {
    // A browser that has no windows to put away prints as well.
  }
}

/** What a page asked for outside itself, all of it refused. */
type Refusals = {
  forget(): void;
  /** @param what What the page is called. @throws PrintFault when anything was refused since the last `forget`. */
  assertNone(what: string): Promise<void>;
};

/** Addresses that are in the page itself. */
const INSIDE = /^(?:data|about):/iu;

/** How Chromium reports a file that a page may not read; no request is made that could be intercepted. */
const REFUSED_FILE = /Not allowed to load local resource: (\S+)/u;

/** From now on refuses whatever the page asks for outside itself, and keeps the addresses. */
async function refuseRequests(page: Page, session: CDPSession): Promise<Refusals> {
  const addresses = new Set<string>();
  const note = (address: string): void => {
    if (!INSIDE.test(address)) addresses.add(address);
  };
  page.on('request', (request) => {
    note(request.url());
    const answer = INSIDE.test(request.url()) ? request.continue() : request.abort('blockedbyclient');
    // A page that was closed meanwhile cannot be answered, and need not be.
    answer.catch(() => {});
  });
  await page.setRequestInterception(true);
  // Interception reports from another process, which may be late. The page's own reports come in the order in which
  // things happened, so that after an answer to any question all that was asked for before is known.
  session.on('Network.requestWillBeSent', ({ request }) => note(request.url));
  session.on('Log.entryAdded', ({ entry }) => {
    const file = REFUSED_FILE.exec(entry.text)?.[1];
    if (file) note(file);
  });
  await session.send('Network.enable');
  await session.send('Log.enable');

  const assertNone = async (what: string): Promise<void> => {
    await evaluate(session, '0');
    const [first, ...others] = addresses;
    if (first === undefined) return;
    const more = others.length > 0 ? ` and ${others.length} more` : '';
    throw new PrintFault(
      `${what} asks for ${first}${more}; a page must hold all it shows, since the browser makes no request`,
    );
  };
  return { forget: () => addresses.clear(), assertNone };
}
