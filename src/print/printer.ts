import type { Desk } from './desk.ts';
import type { PageFont } from './kept-fonts.ts';
import type { PrinterOptions } from './owner.ts';
import { pin } from './pdf.ts';
import { BrowserPool } from './pool.ts';

export type { PageFont } from './kept-fonts.ts';
export type { PrinterOptions } from './owner.ts';

export type PdfOptions = {
  readonly title: string;
  /** The ISO day that stands in the file as the day it was made: `2026-12-10`. */
  readonly date: string;
  /** One of our scripts that arranges the document once it is laid out for print. */
  readonly arrange?: string | undefined;
  /** What the document is set in, beside fonts it brings itself. One that is given again as it is costs nothing. */
  readonly fonts?: readonly PageFont[];
  /** Documents of one batch are of no use without each other: one that fails takes with it those of it that wait. */
  readonly batch?: string;
};

/** The size of a picture in CSS pixels, and how many pixels of the picture each is wide. */
type PictureOptions = { readonly width: number; readonly height: number; readonly scale: number };

/**
 * Prints HTML documents. Each must hold all it shows: styles in it, pictures as `data:`, and fonts so far as they are not
 * given with it. Scripts do not run and nothing is requested. The browser starts with the first page and serves until `close`;
 * pages take turns.
 */
export type Printer = {
  /**
   * The PDF of a document: page sizes from its `@page` rules, backgrounds printed, tagged, with an outline of its
   * headings. The same document, title and date give the same bytes.
   * @throws BrowserMissing when no browser serves. @throws PrintFault when the page cannot be printed.
   */
  pdf(html: string, options: PdfOptions): Promise<Uint8Array>;
  /** A PNG of a document's upper left part. @throws As `pdf` does. */
  picture(html: string, options: PictureOptions): Promise<Uint8Array>;
  /** Starts the browser while other work is done, for pages that are sure to come. */
  warmUp(): void;
  /** Ends the browser after the pages that wait: no more are likely to come. A page that does starts another. */
  rest(): void;
  /** Which browser serves: its version, path and how it was found; `not started` before the first page. */
  browser(): string;
  /** Ends the browser and waits until it is gone. Pages that still wait for their turn are refused. */
  close(): Promise<void>;
};

/** A printer; nothing starts before its first page. Close it in a `finally`. */
export function openPrinter(options: PrinterOptions = {}): Printer {
  const owner = new BrowserPool(options);
  return {
    pdf: (html, { title, date, arrange, fonts, batch }) => {
      const print = async ({ session, lay, assertSelfContained }: Desk): Promise<Uint8Array> => {
        const then = [...(arrange === undefined ? [] : [arrange]), KEEP_ALTERNATIVES];
        await lay(html, title, { medium: 'print', fonts, then, title });
        const { data } = await session.send('Page.printToPDF', WHOLE_PAGES);
        await assertSelfContained(title);
        return pin(Buffer.from(data, 'base64'), date);
      };
      return owner.inTurn(title, print, batch);
    },
    picture: (html, { width, height, scale }) =>
      owner.inTurn('a picture', async ({ page, lay, assertSelfContained }) => {
        await page.setViewport({ width, height, deviceScaleFactor: scale });
        await lay(html, 'a picture', { medium: 'screen' });
        const bytes = await page.screenshot({ type: 'png' });
        await assertSelfContained('a picture');
        return bytes;
      }),
    warmUp: () => owner.warmUp(),
    rest: () => owner.rest(),
    browser: () => owner.name,
    close: () => owner.close(),
  };
}

/** All of a document on its own paper, in one answer: a stream is asked for again and again. */
const WHOLE_PAGES = {
  preferCSSPageSize: true,
  printBackground: true,
  generateTaggedPDF: true,
  generateDocumentOutline: true,
  marginTop: 0,
  marginBottom: 0,
  marginLeft: 0,
  marginRight: 0,
} as const;

/**
 * A script for the page, in which only ours run. A browser writes a drawing's text alternative into a PDF only when the
 * drawing holds text: to one without, this gives a space that cannot be seen. Pictures keep theirs by themselves.
 */
const KEEP_ALTERNATIVES = `for (const drawing of document.querySelectorAll('svg[role="img"]')) {
  if ([...drawing.querySelectorAll('text')].some(({ textContent }) => /\\S|\\u00a0/.test(textContent))) continue;
  const space = document.createElementNS('http://www.w3.org/2000/svg', 'text');
  const { x, y, width, height } = drawing.getBBox();
  space.setAttribute('x', x + width / 2);
  space.setAttribute('y', y + height / 2);
  space.setAttribute('font-size', '1');
  space.textContent = '\\u00a0';
  drawing.append(space);
}`;
