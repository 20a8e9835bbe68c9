import { once } from 'node:events';
import { readFileSync, type Stats, statSync } from 'node:fs';
import { join, sep } from 'node:path';
import { type FSWatcher, watch } from 'chokidar';
import { Busy, takeLock } from '../make/lock.ts';
import { type MakeResult, make } from '../make/make.ts';
import type { MakeOptions } from '../make/make-options.ts';
import { NoSuchProject } from '../make/named.ts';
import { findingJson } from '../proof/print.ts';
import { workDraft } from '../publish/revisions.ts';
import { packageRoot } from '../recall/package-root.ts';
import { type LiveServer, openServer } from './server.ts';

export type PreviewOptions = Omit<MakeOptions, 'pdf' | 'pdfsLater' | 'only'> & {
  readonly port: number;
  /** Told after every make. */
  readonly told: (news: {
    readonly result?: MakeResult;
    readonly trouble?: string;
    readonly seconds: number;
  }) => void;
};

/** What the previewed pages are told: what was found, and which projects differ from what was published. */
type PreviewState = {
  /** Rises with every make, so that a page knows whether it is the latest. */
  readonly version: number;
  readonly findings: readonly ReturnType<typeof findingJson>[];
  readonly drafts: readonly { readonly slug: string; readonly changes: readonly string[] }[];
  /** A broken environment or a mistake of ours, in one line. */
  readonly trouble?: string;
};

export type Preview = { readonly address: string; readonly close: () => Promise<void> };

/**
 * Serves the workspace on loopback and follows every save: pages are made at once, a PDF when it is asked for.
 * Broken files show as findings on the page, over the last good output.
 */
export async function openPreview(options: PreviewOptions): Promise<Preview> {
  const { out, release } = await takeFolder(options.out);
  const session = new Session({ ...options, out });
  await session.follow();
  const preview = await session.open();
  return {
    address: preview.address,
    close: async () => {
      await preview.close();
      await release();
    },
  };
}

/** Lies in the output folder of a preview as long as it runs. */
const LOCK = '.previewing';
const MOST_PREVIEWS = 20;

/** A folder of its own for each preview: the one that was named, or one beside it with a number behind. */
async function takeFolder(
  wanted: string,
  number = 1,
): Promise<{ readonly out: string; readonly release: () => Promise<void> }> {
  const out = number === 1 ? wanted : `${wanted}-${number}`;
  try {
    return { out, release: await takeLock(out, LOCK) };
  } catch (error) {
    if (error instanceof Busy && number < MOST_PREVIEWS) return takeFolder(wanted, number + 1);
    throw error;
  }
}

/** How long until what could not be done is tried again, and until the workspace's folder is looked for, in milliseconds. */
const AGAIN = 1000;

/** An editor saves in several steps; a change is over when nothing has happened for so many milliseconds. */
const QUIET = 30;

class Session {
  readonly #options: PreviewOptions;
  #state: PreviewState = { version: 0, findings: [], drafts: [] };
  #server: LiveServer | undefined;
  /** One make at a time: they write the same files. */
  #turn: Promise<unknown> = Promise.resolve();
  #isToFollow = false;
  #watcher: FSWatcher | undefined;
  /** Which folder is watched as the workspace; empty where there is none. */
  #watched = '';
  #timer: NodeJS.Timeout | undefined;

  constructor(options: PreviewOptions) {
    this.#options = options;
  }

  async open(): Promise<Preview> {
    const { out, port } = this.#options;
    const templates = join(packageRoot(), 'templates');
    const live = (name: string): string => readFileSync(join(templates, 'preview', name), 'utf8');
    const server = await openServer(
      {
        folder: join(out, 'site'),
        state: () => this.#state,
        prepare: (path) => this.#prepare(path),
        live: { script: live('live.js'), style: live('live.css') },
      },
      port,
    );
    this.#server = server;
    await this.#watch();
    const looking = setInterval(() => this.#look(), AGAIN);
    // So that the first save need not wait for what makes pages to be loaded.
    await import('../make/workshop.ts');
    return {
      address: server.address,
      close: async () => {
        clearInterval(looking);
        clearTimeout(this.#timer);
        await this.#watcher?.close();
        await server.close();
        await this.#turn;
      },
    };
  }

  async #watch(): Promise<void> {
    const { root, out } = this.#options;
    await this.#watcher?.close();
    this.#watched = folderAt(root);
    this.#watcher = watch([root, join(packageRoot(), 'templates')], {
      ignoreInitial: true,
      ignored: (path, stats) => isOurs(path, out) || (stats !== undefined && !isFollowed(stats)),
    });
    this.#watcher.on('all', () => this.#followIn(QUIET));
    await once(this.#watcher, 'ready');
  }

  /** A folder that was moved away is watched no more, also when it is back or another is in its place. */
  async #look(): Promise<void> {
    const now = folderAt(this.#options.root);
    if (now === this.#watched) return;
    this.#watched = now;
    if (now !== '') await this.#watch();
    this.#followIn(QUIET);
  }

  #followIn(milliseconds: number): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.follow(), milliseconds);
  }

  /** Makes what changed, without PDFs, and tells every open page. What changes before it begins is in it. */
  async follow(): Promise<void> {
    if (this.#isToFollow) return;
    this.#isToFollow = true;
    await this.#inTurn(async () => {
      this.#isToFollow = false;
      const version = this.#state.version + 1;
      const began = performance.now();
      const seconds = (): number => (performance.now() - began) / 1000;
      try {
        const result = await make({ ...this.#options, pdf: false, pdfsLater: true });
        const state = await stateAfter(result, version);
        if (isNews(result, this.#state, state)) this.#state = state;
        this.#options.told({ result, seconds: seconds() });
      } catch (error) {
        const trouble = error instanceof Error ? error.message : String(error);
        if (trouble !== this.#state.trouble) {
          this.#options.told({ trouble, seconds: seconds() });
          this.#state = { version, findings: [], drafts: [], trouble };
        }
        // Whatever else it was, the folder may have been away.
        if (!(error instanceof Busy)) this.#watched = '';
        this.#followIn(AGAIN);
      }
    });
    this.#server?.announce();
  }

  /** A PDF is printed when somebody opens it, if what it shows has changed since. */
  async #prepare(path: string): Promise<void> {
    const [slug, ...rest] = path.split('/');
    if (!path.endsWith('.pdf') || slug === undefined || rest.length === 0) return;
    try {
      await this.#inTurn(() => make({ ...this.#options, pdf: true, only: [slug] }));
    } catch (error) {
      // That there is no such project is said as of any file that is not there.
      if (!(error instanceof NoSuchProject)) throw error;
    }
  }

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const result = this.#turn.then(work);
    this.#turn = result.catch(() => {});
    return result;
  }
}

function isOurs(path: string, out: string): boolean {
  return path === out || path.startsWith(`${out}${sep}`) || /(?:^|[/\\])node_modules(?:[/\\]|$)/u.test(path);
}

function isFollowed(stats: Stats): boolean {
  return stats.isFile() || stats.isDirectory();
}

/** Tells one folder from another that has its path later; empty where there is none. */
function folderAt(path: string): string {
  const stats = statSync(path, { throwIfNoEntry: false });
  return stats?.isDirectory() ? `${stats.dev} ${stats.ino}` : '';
}

async function stateAfter({ recall, spots, findings }: MakeResult, version: number): Promise<PreviewState> {
  const drafts: { slug: string; changes: readonly string[] }[] = [];
  for (const spot of spots) {
    const changes = await recall.work('draft', spot, workDraft);
    recall.release(spot);
    if (changes) drafts.push({ slug: spot.slug, changes });
  }
  recall.save();
  return { version, findings: findings.map(findingJson), drafts };
}

/** Whether an open page would look otherwise: a save that changed nothing should not move it. */
function isNews({ written }: MakeResult, before: PreviewState, after: PreviewState): boolean {
  const said = ({ findings, drafts, trouble }: PreviewState): string =>
    JSON.stringify([findings, drafts, trouble]);
  return before.version === 0 || written.some(({ how }) => how !== 'kept') || said(before) !== said(after);
}
