import type { Candidate } from './candidate.ts';
import { connectTo, type Serving } from './connect.ts';
import { type Desk, openDesk } from './desk.ts';
import { BrowserMissing, NAME_ANOTHER, PrintFault } from './fault.ts';
import { firstThatStarts, sources } from './find-browser.ts';
import { type Guard, guardHere } from './guard.ts';
import { expiry, type LaunchOptions, launch } from './launch.ts';
import { type DownloadProgress, realSurroundings, type Surroundings } from './surroundings.ts';

export type PrinterOptions = {
  /** The path of a browser's program, used instead of any other. */
  readonly browser?: string | undefined;
  /** Browsers that run elsewhere, by the addresses of their web sockets; with any, none is started. */
  readonly endpoints?: readonly string[] | undefined;
  /** Whether a browser may be downloaded when none is found. Default: true. */
  readonly download?: boolean;
  readonly onDownload?: DownloadProgress;
  /** How long a browser may take to start, in milliseconds. Default: 30,000. */
  readonly launchTimeout?: number;
  /** How long one page may take, in milliseconds. Default: 60,000. */
  readonly pageTimeout?: number;
  readonly surroundings?: Surroundings;
  /** What ends its browser should the program end first. Default: that of the program's own thread. */
  readonly guard?: Guard;
};

/** A browser that serves, with its page made ready. */
type Service = { readonly running: Serving; readonly desk: Desk };

async function begin(candidate: Candidate, options: LaunchOptions): Promise<Service> {
  const running = await launch(candidate, options);
  return withDesk(running, running.browser, options.timeout, `install it again, ${NAME_ANOTHER}`);
}

async function beginAt(endpoint: string, timeout: number): Promise<Service> {
  const { serving, context } = await connectTo(endpoint, timeout);
  return withDesk(serving, context, timeout, 'start another one there, or leave the option out');
}

/**
 * A browser with its page made ready. One whose page's own process died before we listened never answers.
 * @throws BrowserMissing with this remedy.
 */
async function withDesk(
  running: Serving,
  place: Parameters<typeof openDesk>[0],
  timeout: number,
  remedy: string,
): Promise<Service> {
  const late = (): Error => new Error('late');
  try {
    return { running, desk: await Promise.race([openDesk(place), expiry(timeout, late)]) };
  } catch {
    await running.stop();
    throw new BrowserMissing(`${running.name} ended as its first page was opened`, remedy);
  }
}

/**
 * A job's result, unless the page dies or time is up before. Both then forget the job: a race would have what came of every
 * job held as long as its browser runs.
 */
function unlessEnded<T>(
  job: Promise<T>,
  crashed: AbortSignal,
  milliseconds: number,
  late: () => Error,
): Promise<T> {
  return new Promise((resolve, reject) => {
    const end = (): void => reject(crashed.reason);
    if (crashed.aborted) end();
    crashed.addEventListener('abort', end);
    const timer = setTimeout(() => reject(late()), milliseconds);
    timer.unref();
    const forget = (): void => {
      clearTimeout(timer);
      crashed.removeEventListener('abort', end);
    };
    job.then(resolve, reject).finally(forget);
  });
}

type OwnerOptions = Omit<PrinterOptions, 'endpoints'> & {
  readonly endpoint?: string | undefined;
  /** How many jobs of each batch failed, with all owners that share it. */
  readonly failed?: Map<string, number>;
};

/** The one owner of a browser: starts it with the first job, lets jobs take turns, replaces it when it dies, ends it. */
export class BrowserOwner {
  readonly #options: Required<Omit<OwnerOptions, 'browser' | 'endpoint'>> &
    Pick<OwnerOptions, 'browser' | 'endpoint'>;
  #service: Promise<Service> | undefined;
  #name = 'not started';
  #turn: Promise<unknown> = Promise.resolve();
  /** Why no browser started the last time. */
  #missing: unknown;
  #closed = false;
  /** Resolves once the browser that was told to rest is gone. */
  #rested: Promise<void> = Promise.resolve();

  constructor(options: OwnerOptions) {
    this.#options = {
      download: true,
      onDownload: () => {},
      launchTimeout: 30_000,
      pageTimeout: 60_000,
      surroundings: realSurroundings(),
      guard: guardHere,
      failed: new Map(),
      ...options,
    };
  }

  /** Which browser serves or served last. */
  get name(): string {
    return this.#name;
  }

  /**
   * Does one job after another: a page kept open prints ten times faster than a new one, and a second gains little.
   * Where no browser starts, those that wait are refused along with the first: each would wait as long for nothing.
   * @param what What the job makes, for messages.
   * @param batch Of a batch a job that fails takes with it those that wait.
   * @throws BrowserMissing when no browser serves. @throws PrintFault when the job cannot be done.
   */
  inTurn<T>(what: string, job: (desk: Desk) => Promise<T>, batch?: string): Promise<T> {
    const { failed } = this.#options;
    const countFailed = (): number => (batch === undefined ? 0 : (failed.get(batch) ?? 0));
    const [before, missing] = [countFailed(), this.#missing];
    const result = this.#turn.then(async () => {
      this.#assertOpen(what);
      if (this.#missing !== missing) throw this.#missing;
      if (countFailed() !== before)
        throw new PrintFault(`${what} was not printed: another page before it failed`);
      try {
        return await this.#attempt(what, job, false);
      } catch (error) {
        if (batch !== undefined) failed.set(batch, countFailed() + 1);
        throw error;
      }
    });
    this.#turn = result.catch(() => {});
    return result;
  }

  /** Starts the browser for the jobs to come; what is wrong with it the first of them says. */
  warmUp(): void {
    this.#start('a page').catch(() => {});
  }

  /** Ends the browser once no job waits any more; one that comes later starts another. */
  rest(): void {
    this.#rested = this.#turn.then(() => this.#stop());
    this.#turn = this.#rested;
  }

  /** Ends the browser and waits until it is gone; jobs that wait or run are refused. */
  async close(): Promise<void> {
    this.#closed = true;
    await this.#stop();
    await this.#rested;
  }

  async #attempt<T>(what: string, job: (desk: Desk) => Promise<T>, again: boolean): Promise<T> {
    const { running, desk } = await this.#start(what);
    const { pageTimeout } = this.#options;
    const late = (): PrintFault =>
      new PrintFault(`${what} took longer than ${pageTimeout / 1000} s to print with ${this.#name}`);
    try {
      return await unlessEnded(job(desk), desk.crashed, pageTimeout, late);
    } catch (error) {
      const died = running.hasDied() || desk.crashed.aborted;
      // Whatever went wrong, the next page gets a fresh browser: starting one takes a fraction of a second.
      await this.#stop();
      this.#assertOpen(what);
      if (error instanceof PrintFault) throw error;
      if (died && !again) return await this.#attempt(what, job, true);
      if (died) throw new PrintFault(`the browser died while printing ${what}, twice: ${this.#name}`);
      const cause = error instanceof Error ? error.message : String(error);
      throw new PrintFault(`${what} could not be printed (${cause})`);
    }
  }

  #assertOpen(what: string): void {
    if (this.#closed) throw new PrintFault(`${what} was not printed: printing was ended`);
  }

  async #start(what: string): Promise<Service> {
    this.#assertOpen(what);
    this.#service ??= this.#launch().catch((error: unknown) => {
      this.#service = undefined;
      this.#missing = error;
      throw error;
    });
    return this.#service;
  }

  async #launch(): Promise<Service> {
    const { surroundings, guard, browser, endpoint, download, onDownload } = this.#options;
    const { launchTimeout: timeout } = this.#options;
    const service = await (endpoint === undefined
      ? firstThatStarts(
          sources({ browser, download, onDownload }, surroundings),
          (candidate) => begin(candidate, { surroundings, timeout, guard }),
          surroundings,
        )
      : beginAt(endpoint, timeout));
    this.#name = service.running.name;
    return service;
  }

  async #stop(): Promise<void> {
    const service = this.#service;
    this.#service = undefined;
    const started = await service?.catch(() => undefined);
    await started?.running.stop();
  }
}
