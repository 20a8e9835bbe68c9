import { once } from 'node:events';
import { type Stats, statSync } from 'node:fs';
import { relative, sep } from 'node:path';
import { type FSWatcher, watch } from 'chokidar';

/** How often the workspace's folder is looked for, in milliseconds. */
const LOOK = 1000;

type Watched = {
  /** The workspace, and what pages are made with beside it. */
  readonly root: string;
  readonly templates: string;
  /** The output folder, which is not followed. */
  readonly out: string;
  /** Told of each change: the folder of the workspace it is in, or undefined where it may be anywhere. */
  readonly changed: (folder: string | undefined) => void;
};

/** Follows a workspace on disk, also where it is moved away and comes back. */
export class Watching {
  readonly #watched: Watched;
  #watcher: FSWatcher | undefined;
  #looking: NodeJS.Timeout | undefined;
  /** Which folder is followed as the workspace; empty where there is none. */
  #folder = '';

  private constructor(watched: Watched) {
    this.#watched = watched;
  }

  static async open(watched: Watched): Promise<Watching> {
    const watching = new Watching(watched);
    await watching.#watch();
    watching.#looking = setInterval(() => watching.#look(), LOOK);
    return watching;
  }

  async close(): Promise<void> {
    clearInterval(this.#looking);
    await this.#watcher?.close();
  }

  /** Says that the folder may have been away: it is followed anew. */
  doubt(): void {
    this.#folder = '';
  }

  async #watch(): Promise<void> {
    const { root, templates, out, changed } = this.#watched;
    await this.#watcher?.close();
    this.#folder = folderAt(root);
    this.#watcher = watch([root, templates], {
      ignoreInitial: true,
      ignored: (path, stats) => isOurs(path, out) || (stats !== undefined && !isFollowed(stats)),
    });
    this.#watcher.on('all', (_, path) => changed(folderIn(root, path)));
    await once(this.#watcher, 'ready');
  }

  /** A folder that was moved away is watched no more, also when it is back or another is in its place. */
  async #look(): Promise<void> {
    const now = folderAt(this.#watched.root);
    if (now === this.#folder) return;
    this.#folder = now;
    if (now !== '') await this.#watch();
    this.#watched.changed(undefined);
  }
}

function isOurs(path: string, out: string): boolean {
  return path === out || path.startsWith(`${out}${sep}`) || /(?:^|[/\\])node_modules(?:[/\\]|$)/u.test(path);
}

function isFollowed(stats: Stats): boolean {
  return stats.isFile() || stats.isDirectory();
}

/** The folder of a workspace that a file lies in; undefined for one in none. */
function folderIn(root: string, path: string): string | undefined {
  const [folder, ...rest] = relative(root, path).split(sep);
  return rest.length === 0 || folder === '..' ? undefined : folder;
}

/** Tells one folder from another that has its path later; empty where there is none. */
function folderAt(path: string): string {
  const stats = statSync(path, { throwIfNoEntry: false });
  return stats?.isDirectory() ? `${stats.dev} ${stats.ino}` : '';
}
