import { Worker } from 'node:worker_threads';
import { type FaultData, faultFrom, PrintFault } from './fault.ts';
import { type Guarded, guardHere } from './guard.ts';
import type { PdfOptions, Printer, PrinterOptions } from './printer.ts';

/** What the thread is started with. */
export type PressOptions = Pick<PrinterOptions, 'browser' | 'endpoints'>;

type PageOrder = { readonly html: string; readonly options: PdfOptions };

/** What the thread is told; a page has a number, by which it is answered. Told to close, the thread ends. */
export type PressOrder =
  | { readonly kind: 'warm-up' }
  | { readonly kind: 'rest' }
  | { readonly kind: 'close' }
  | ({ readonly kind: 'pdf'; readonly number: number } & PageOrder);

/** What the thread tells. */
export type PressReport =
  | { readonly kind: 'done'; readonly number: number; readonly bytes: Uint8Array }
  | { readonly kind: 'failed'; readonly number: number; readonly fault: FaultData }
  | { readonly kind: 'guard'; readonly guarded: Guarded }
  | { readonly kind: 'forget'; readonly guarded: Guarded };

/** Less than usual for what is soon forgotten, which here is little; in megabytes. */
const YOUNG = 8;

type Waiting = { resolve(bytes: Uint8Array): void; reject(error: unknown): void };

/**
 * A printer that runs in another thread, by its first file. The thread starts with the first thing it is told; after one that
 * died, another starts with the next page.
 */
export class PressThread implements Pick<Printer, 'pdf' | 'warmUp' | 'rest' | 'close'> {
  readonly #script: string;
  readonly #options: PressOptions;
  readonly #waiting = new Map<number, Waiting>();
  /** What guards each profile. */
  readonly #guards = new Map<string, () => void>();
  #thread: Worker | undefined;
  #asked = 0;
  #isClosed = false;

  constructor(script: string, options: PressOptions) {
    this.#script = script;
    this.#options = options;
  }

  pdf(html: string, options: PdfOptions): Promise<Uint8Array> {
    return this.#ask({ html, options });
  }

  warmUp(): void {
    if (!this.#isClosed) this.#tell({ kind: 'warm-up' });
  }

  rest(): void {
    if (this.#thread) this.#tell({ kind: 'rest' });
  }

  async close(): Promise<void> {
    const thread = this.#thread;
    const ended = thread && new Promise((resolve) => thread.once('exit', resolve));
    if (thread && !this.#isClosed) this.#tell({ kind: 'close' });
    this.#isClosed = true;
    await ended;
  }

  async #ask(page: PageOrder): Promise<Uint8Array> {
    if (this.#isClosed) throw new PrintFault(`${page.options.title} was not printed: printing was ended`);
    this.#asked += 1;
    const number = this.#asked;
    return new Promise((resolve, reject) => {
      this.#waiting.set(number, { resolve, reject });
      this.#tell({ kind: 'pdf', number, ...page });
    });
  }

  #tell(order: PressOrder): void {
    this.#thread ??= this.#start();
    this.#thread.postMessage(order);
  }

  #start(): Worker {
    const thread = new Worker(this.#script, {
      workerData: this.#options,
      resourceLimits: { maxYoungGenerationSizeMb: YOUNG },
    });
    let fault = 'printing was ended';
    thread.on('message', (report: PressReport) => this.#hear(report));
    thread.on('error', (error) => {
      fault = `printing broke off (${error.message})`;
    });
    thread.once('exit', () => {
      this.#thread = undefined;
      for (const { reject } of this.#waiting.values()) reject(new PrintFault(fault));
      this.#waiting.clear();
    });
    return thread;
  }

  #hear(report: PressReport): void {
    if (report.kind === 'guard') {
      this.#guards.set(report.guarded.profile, guardHere(report.guarded));
    } else if (report.kind === 'forget') {
      this.#guards.get(report.guarded.profile)?.();
      this.#guards.delete(report.guarded.profile);
    } else {
      const waiting = this.#waiting.get(report.number);
      this.#waiting.delete(report.number);
      if (report.kind === 'done') waiting?.resolve(report.bytes);
      else waiting?.reject(faultFrom(report.fault));
    }
  }
}
