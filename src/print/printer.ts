import { withDeadline } from './deadline.ts';
import { type Desk, openDesk } from './desk.ts';
import { PrintFault } from './fault.ts';
import { firstThatStarts, sources } from './find-browser.ts';
import { launch, type Running } from './launch.ts';
import { pinDates } from './pin.ts';
import { type Progress, realSurroundings, type Surroundings } from './surroundings.ts';

export type PrinterOptions = {
  /** The path of a browser's program, used instead of any other. */
  readonly browser?: string | undefined;
  /** Whether a browser may be downloaded when none is found. Default: true. */
  readonly download?: boolean;
  readonly onDownload?: Progress;
  /** How long a browser may take to start, in milliseconds. Default: 30,000. */
  readonly launchTimeout?: number;
  /** How long one page may take, in milliseconds. Default: 60,000. */
  readonly pageTimeout?: number;
  readonly surroundings?: Surroundings;
};

export type PdfOptions = {
  readonly title: string;
  /** The ISO day that stands in the file as the day it was made: `2026-12-10`. */
  readonly date: string;
};

/** The size of a picture in CSS pixels, and how many pixels of the picture each is wide. */
export type PictureOptions = { readonly width: number; readonly height: number; readonly scale: number };

/**
 * Prints HTML documents. Each must hold all it shows: styles in it, fonts and pictures as `data:`. Scripts do not run
 * and nothing is requested. The browser starts with the first page and serves until `close`; pages take turns.
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
  /** Which browser serves: its version, path and how it was found; `not started` before the first page. */
  browser(): string;
  /** Ends the browser and waits until it is gone. Pages that still wait for their turn are refused. */
  close(): Promise<void>;
};

type Job<T> = (desk: Desk) => Promise<T>;

class OneBrowserPrinter implements Printer {
  readonly #options: Required<Omit<PrinterOptions, 'browser'>> & Pick<PrinterOptions, 'browser'>;
  #starting: Promise<{ running: Running; desk: Desk }> | undefined;
  #name = 'not started';
  #turn: Promise<unknown> = Promise.resolve();
  #closed = false;

  constructor(options: PrinterOptions) {
    this.#options = {
      download: true,
      onDownload: () => {},
      launchTimeout: 30_000,
      pageTimeout: 60_000,
      surroundings: realSurroundings(),
      ...options,
    };
  }

  pdf(html: string, { title, date }: PdfOptions): Promise<Uint8Array> {
    return this.#inTurn(title, async ({ page, lay, assertSelfContained }) => {
      await lay(html, title);
      await page.evaluate(`document.title = ${JSON.stringify(title)}`);
      const bytes = await page.pdf({
        preferCSSPageSize: true,
        printBackground: true,
        tagged: true,
        outline: true,
        waitForFonts: false,
      });
      assertSelfContained(title);
      return pinDates(bytes, date);
    });
  }

  picture(html: string, { width, height, scale }: PictureOptions): Promise<Uint8Array> {
    const what = 'a picture';
    return this.#inTurn(what, async ({ page, lay, assertSelfContained }) => {
      await page.setViewport({ width, height, deviceScaleFactor: scale });
      await lay(html, what);
      const bytes = await page.screenshot({ type: 'png' });
      assertSelfContained(what);
      return bytes;
    });
  }

  browser(): string {
    return this.#name;
  }

  async close(): Promise<void> {
    this.#closed = true;
    await this.#stop();
  }

  /** One page at a time: a page kept open prints ten times faster than a new one, and a second gains little. */
  #inTurn<T>(what: string, job: Job<T>): Promise<T> {
    const result = this.#turn.then(() => this.#print(what, job));
    this.#turn = result.catch(() => {});
    return result;
  }

  async #print<T>(what: string, job: Job<T>): Promise<T> {
    for (let again = false; ; again = true) {
      const { running, desk } = await this.#start(what);
      try {
        return await withDeadline(Promise.race([job(desk), desk.crashed]), this.#options.pageTimeout, () =>
          this.#late(what),
        );
      } catch (error) {
        const crashed = await Promise.race([desk.crashed.catch(() => true), false]);
        const died = running.hasDied() || crashed;
        // Whatever went wrong, the next page gets a fresh browser: starting one takes less than a tenth of a second.
        await this.#stop();
        if (error instanceof PrintFault || this.#closed) throw this.#closed ? this.#refusal(what) : error;
        if (died && !again) continue;
        throw this.#asFault(what, error, died);
      }
    }
  }

  async #start(what: string): Promise<{ running: Running; desk: Desk }> {
    if (this.#closed) throw this.#refusal(what);
    this.#starting ??= this.#launch();
    try {
      return await this.#starting;
    } catch (error) {
      this.#starting = undefined;
      throw error;
    }
  }

  async #launch(): Promise<{ running: Running; desk: Desk }> {
    const { surroundings, browser, download, onDownload, launchTimeout: timeout } = this.#options;
    const places = sources({ browser, download, onDownload }, surroundings);
    const start = async (
      candidate: Parameters<typeof launch>[0],
    ): Promise<{ running: Running; desk: Desk }> => {
      const running = await launch(candidate, { surroundings, timeout });
      return { running, desk: await openDesk(running.browser) };
    };
    const started = await firstThatStarts(places, start, surroundings);
    this.#name = started.running.name;
    return started;
  }

  async #stop(): Promise<void> {
    const starting = this.#starting;
    this.#starting = undefined;
    const started = await starting?.catch(() => undefined);
    await started?.running.stop();
  }

  #late(what: string): PrintFault {
    const seconds = this.#options.pageTimeout / 1000;
    return new PrintFault('timeout', `${what} took longer than ${seconds} s to print with ${this.#name}`);
  }

  #refusal(what: string): PrintFault {
    return new PrintFault('closed', `${what} was not printed: printing was ended`);
  }

  #asFault(what: string, error: unknown, died: boolean): PrintFault {
    if (died) return new PrintFault('died', `${what} made the browser end, twice: ${this.#name}`);
    const cause = error instanceof Error ? error.message : String(error);
    return new PrintFault('failed', `${what} could not be printed (${cause})`);
  }
}

/** A printer; nothing starts before its first page. Close it in a `finally`. */
export function openPrinter(options: PrinterOptions = {}): Printer {
  return new OneBrowserPrinter(options);
}
