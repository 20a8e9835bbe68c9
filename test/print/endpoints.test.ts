import puppeteer, { type Browser } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { browserDigest } from '../../src/print/browser-digest.ts';
import { sources } from '../../src/print/find-browser.ts';
import { openPrinter, type Printer, type PrinterOptions } from '../../src/print/printer.ts';
import { realSurroundings } from '../../src/print/surroundings.ts';

/** A browser as somebody else would start it, with the flags that letters are spaced by. */
async function startElsewhere(): Promise<Browser> {
  for (const place of sources({ download: false, onDownload: () => {} }, realSurroundings())) {
    const [found] = await place();
    if (!found) continue;
    const { path, kind, libraries, fonts } = found;
    return puppeteer.launch({
      executablePath: path,
      headless: kind === 'shell' ? 'shell' : true,
      args: ['--no-sandbox', '--disable-gpu', '--font-render-hinting=none'],
      env: {
        ...process.env,
        ...(libraries && { LD_LIBRARY_PATH: libraries }),
        ...(fonts && { FONTCONFIG_FILE: fonts }),
      },
    });
  }
  throw new Error('no browser to test with');
}

const PAGES = ['One', 'Two', 'Three', 'Four'].map(
  (word) => `<!doctype html><html lang="en"><title>x</title><h1>${word}</h1><p>words</p></html>`,
);

async function printed(options: PrinterOptions): Promise<readonly string[]> {
  const printer: Printer = openPrinter(options);
  try {
    const pdfs = PAGES.map((html) => printer.pdf(html, { title: 'Page', date: '2026-12-10' }));
    return (await Promise.all(pdfs)).map((bytes) => Buffer.from(bytes).toString('base64'));
  } finally {
    await printer.close();
  }
}

let elsewhere: Browser;

beforeAll(async () => {
  elsewhere = await startElsewhere();
});

afterAll(() => elsewhere.close());

describe('browsers that run elsewhere', () => {
  it('print the same bytes, however many pages at once, and go on', async () => {
    const endpoint = elsewhere.wsEndpoint();
    const ours = await printed({ download: false });
    expect(new Set(ours).size).toBe(PAGES.length);
    expect(await printed({ endpoints: [endpoint] })).toEqual(ours);
    expect(await printed({ endpoints: [endpoint, endpoint, endpoint] })).toEqual(ours);
    expect(elsewhere.connected).toBe(true);
    expect(elsewhere.browserContexts()).toHaveLength(1);
  });

  it('are told apart by the version they say', async () => {
    const digest = await browserDigest({ endpoints: [elsewhere.wsEndpoint()] }, () => undefined);
    expect(digest).toBe(await elsewhere.version());
  });

  it('are missed with an address that says where', async () => {
    const endpoints = ['ws://127.0.0.1:9/devtools/browser/none'];
    await expect(printed({ endpoints })).rejects.toThrow(
      /^no browser answers at ws:\/\/127\.0\.0\.1:9\/devtools\/browser\/none \(.+\); start one there, or leave the option out$/u,
    );
  });
});
