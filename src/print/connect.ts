import type { Browser, BrowserContext } from 'puppeteer-core';
import { BrowserMissing } from './fault.ts';
import { expiry, type Running } from './launch.ts';

/** A browser that serves, ours or not. */
export type Serving = Pick<Running, 'name' | 'hasDied' | 'stop'>;

/** A place of our own in a browser that somebody else started, for others too. */
type Connected = { readonly serving: Serving; readonly context: BrowserContext };

/**
 * Connects to a browser that runs elsewhere. When we are done our pages end; the browser goes on.
 * @param endpoint `ws://host:port/devtools/browser/…`, as a browser started with `--remote-debugging-port` says it.
 * @throws BrowserMissing when it does not answer.
 */
export async function connectTo(endpoint: string, timeout: number): Promise<Connected> {
  const { default: puppeteer } = await import('puppeteer-core');
  const silent = (cause: string): BrowserMissing =>
    new BrowserMissing(
      `no browser answers at ${endpoint} (${cause})`,
      'start one there, or leave the option out',
    );
  const late = (): BrowserMissing => silent(`not within ${timeout / 1000} s`);
  const answer = puppeteer.connect({ browserWSEndpoint: endpoint, defaultViewport: null });
  const browser = await Promise.race([answer, expiry(timeout, late)]).catch((error: unknown) => {
    throw error instanceof BrowserMissing ? error : silent(causeOf(error));
  });
  const context = await browser.createBrowserContext();
  return { context, serving: await servingOf(browser, context, endpoint) };
}

async function servingOf(browser: Browser, context: BrowserContext, endpoint: string): Promise<Serving> {
  return {
    name: `${await browser.version()} (at ${endpoint})`,
    hasDied: () => !browser.connected,
    stop: async () => {
      await context.close().catch(() => {});
      await browser.disconnect();
    },
  };
}

/** An error of the connection carries its cause in different places. */
function causeOf(error: unknown): string {
  const { message = '' } = error as { readonly message?: string };
  return message.split('\n')[0] || 'it hung up';
}
