import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Busy } from '../make/lock.ts';
import { make } from '../make/make.ts';
import type { MakeOptions, MakeResult } from '../make/make-options.ts';
import { NoSuchProject } from '../make/named.ts';
import { packageRoot } from '../recall/package-root.ts';
import type { Recall } from '../recall/recall.ts';
import { takeFolder } from './folder.ts';
import type { Preview, PreviewOptions, SessionOptions } from './preview-options.ts';
import { openServer } from './server.ts';
import {
  foldersIn,
  isNews,
  NOTHING_KNOWN,
  type PreviewState,
  stateAfter,
  stateJson,
  stateWith,
} from './state.ts';
import { tell, tellMissing } from './told-page.ts';
import { Watching } from './watching.ts';

/** A make, whole or stopped, and what then is the state. */
type MakeWithState = {
  readonly result: MakeResult;
  readonly tellState: (version: number) => Promise<PreviewState>;
};

/**
 * Serves the workspace on loopback and follows every save: pages are made at once, a PDF when it is asked for.
 * Broken files show as findings on the page, over the last good output.
 */
export async function openPreview(options: PreviewOptions): Promise<Preview> {
  const { root, port } = options;
  const { out, release } = await takeFolder(options.out);
  const templates = join(packageRoot(), 'templates');
  const live = (name: string): string => readFileSync(join(templates, 'preview', name), 'utf8');
  const session = new Session({ ...options, out });
  // Followed before anything is read, so that nothing saved while all is made goes unseen.
  const changed = (folder: string | undefined): void => session.changed(folder);
  const watching = await Watching.open({ root, templates, out, changed });
  session.doubt = () => watching.doubt();
  const end = async (): Promise<void> => {
    await watching.close();
    await session.close();
    await release();
  };
  await session.makeAll();
  const server = await openServer(
    {
      folder: join(out, 'site'),
      version: () => session.state.version,
      // Another device has no editor for the files of this one.
      state: ({ isHere }) => stateJson(session.state, isHere ? options.namedFrom : undefined),
      prepare: (path) => prepare(path, session),
      missing: (path) => tellMissing(path, session.slugs),
      live: { script: `${live('patch.js')}\n${live('live.js')}`, style: live('live.css') },
    },
    { port, host: options.host ?? false, entered: (key) => options.entered?.(key) },
  ).catch(async (error: unknown) => {
    await end();
    throw error;
  });
  session.announce = server.announce;
  void session.warmUp();
  return {
    address: server.address,
    port: server.port,
    key: server.key,
    close: async () => {
      await server.close();
      await end();
    },
  };
}

/** Prints a PDF when somebody opens it, if what it shows has changed since; gives what kept it from being printed. */
async function prepare(path: string, session: Session): Promise<string | undefined> {
  const [slug, ...rest] = path.split('/');
  if (!path.endsWith('.pdf') || slug === undefined || rest.length === 0) return undefined;
  try {
    await session.print(slug, path);
    return undefined;
  } catch (error) {
    // That there is no such project is said as of any file that is not there.
    return error instanceof NoSuchProject ? undefined : tell(error);
  }
}

/** How long until what could not be done is tried again, in milliseconds. */
const AGAIN = 1000;
/** An editor saves in several steps; a change is over when nothing has happened for so many milliseconds. */
const QUIET = 30;
/** After a project, what shows it too is made: once nothing was saved for so many milliseconds. */
const REST = 300;

/**
 * The makes of a preview, one at a time, for they write the same files. The projects that were saved are made first and
 * alone, so that their pages are there at once; then whatever else is stale, which needs no one to say what was saved.
 */
class Session {
  state: PreviewState = NOTHING_KNOWN;
  /** Called whenever there is another state. */
  announce: () => void = () => {};
  /** Called where the workspace may have been away. */
  doubt: () => void = () => {};
  readonly #options: SessionOptions;
  readonly #saved = new Set<string>();
  #turn: Promise<unknown> = Promise.resolve();
  #recall: Recall | undefined;
  #isAllDue = false;
  #hasMade = false;
  /** The files that were made of which the pages that are open have not been told. */
  #untold: readonly string[] = [];
  #timer: NodeJS.Timeout | undefined;
  #isClosed = false;

  constructor(options: SessionOptions) {
    this.#options = options;
  }

  get slugs(): readonly string[] {
    return this.#recall?.spots.map(({ slug }) => slug) ?? [];
  }

  /** Makes all that is stale, without PDFs. What changes before it begins is in it. */
  async makeAll(): Promise<void> {
    await this.#attempt(async () => {
      // What was saved meanwhile comes first, unless all pages may be wrong until this is done.
      const mayStop = this.#recall !== undefined && !this.#isAllDue;
      const isOver = (): boolean => mayStop && this.#saved.size > 0;
      this.#isAllDue = false;
      this.#saved.clear();
      const known = this.#recall && { recall: this.#recall };
      const result = await this.#make({ known, isOver });
      this.#recall = result.recall;
      return { result, tellState: (version) => stateAfter(result, version) };
    });
  }

  /**
   * Makes one project to no end, if none was made yet: the first save need not wait for what makes pages to be loaded. Stops
   * once something is saved.
   */
  async warmUp(): Promise<void> {
    const recall = this.#recall;
    const [first] = recall?.spots ?? [];
    if (this.#hasMade || !recall || !first) return;
    const known = { recall, changed: new Set([first.folder]) };
    const isOver = (): boolean => this.#isAllDue || this.#saved.size > 0;
    await this.#inTurn(() => this.#make({ known, all: true, isOver })).catch(() => {});
  }

  /** Something was saved. @param folder The folder it is in; undefined where it may be anywhere. */
  changed(folder: string | undefined): void {
    if (folder !== undefined && foldersIn(this.#recall).has(folder)) this.#saved.add(folder);
    else this.#isAllDue = true;
    this.#followIn(QUIET);
  }

  /** Prints a PDF of a project if it is not as the project is now. @throws what keeps it from being printed. */
  async print(slug: string, path: string): Promise<MakeResult> {
    const onlyPdf = `site/${path}`;
    return this.#inTurn(() => this.#make({ pdf: true, pdfsLater: false, onlyPdf, only: [slug] }));
  }

  /** Ends once what was begun is done; nothing is begun any more. */
  async close(): Promise<void> {
    this.#isClosed = true;
    clearTimeout(this.#timer);
    await this.#turn;
  }

  #followIn(milliseconds: number): void {
    clearTimeout(this.#timer);
    if (this.#isClosed) return;
    this.#timer = setTimeout(() => this.#follow(), milliseconds);
  }

  #follow(): Promise<void> {
    return this.#isAllDue || !this.#recall || this.#saved.size === 0 ? this.makeAll() : this.#makeSaved();
  }

  async #makeSaved(): Promise<void> {
    await this.#attempt(async () => {
      const changed = new Set(this.#saved);
      this.#saved.clear();
      // What is known once its turn has come: the make before it may have read other settings.
      const known = this.#recall && { recall: this.#recall, changed };
      const result = await this.#make({ known });
      this.#recall = result.recall;
      return { result, tellState: (version) => stateWith(this.state, result, version) };
    });
    this.#followIn(this.#saved.size > 0 ? QUIET : REST);
  }

  async #attempt(work: () => Promise<MakeWithState>): Promise<void> {
    await this.#inTurn(async () => {
      const began = performance.now();
      const seconds = (): number => (performance.now() - began) / 1000;
      try {
        const { result, tellState } = await work();
        if (!result.isWhole) return;
        const state = await tellState(this.state.version + 1);
        const touched = this.#untold;
        if (touched.length === 0 && !isNews(this.state, state)) return;
        this.state = state;
        this.#untold = [];
        this.#options.told({ findings: state.findings, touched, seconds: seconds() });
      } catch (error) {
        const trouble = tell(error, this.#options.root);
        if (trouble !== this.state.trouble) {
          this.#options.told({ findings: [], touched: [], trouble, seconds: seconds() });
          this.state = { ...NOTHING_KNOWN, version: this.state.version + 1, trouble };
        }
        if (!(error instanceof Busy)) this.doubt();
        this.#isAllDue = true;
        this.#followIn(AGAIN);
      }
    });
    this.announce();
  }

  /** Whatever pages it makes, also beside a PDF that was asked for, open pages are told of them next. */
  async #make(more: Partial<MakeOptions>): Promise<MakeResult> {
    const result = await make({ ...this.#options, pdf: false, pdfsLater: true, ...more });
    const pages = result.written.filter(({ path, how }) => how !== 'kept' && !path.endsWith('.pdf'));
    this.#untold = [...this.#untold, ...pages.map(({ path }) => path)];
    this.#hasMade ||= result.written.length > 0;
    return result;
  }

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const result = this.#turn.then(work);
    this.#turn = result.catch(() => {});
    return result;
  }
}
