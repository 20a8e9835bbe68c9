import { watch as watchFiles } from 'chokidar';

/** Watches folders until closed; `changed` is called once for a burst of changes, never while it is still at work. */
type Watching = { readonly close: () => Promise<void> };

/** An editor saves in several steps; a change is over when nothing has happened for so long. */
const QUIET = 60;

export async function watchFolders(
  folders: readonly string[],
  ignored: (path: string) => boolean,
  changed: () => Promise<void>,
): Promise<Watching> {
  let timer: NodeJS.Timeout | undefined;
  let working: Promise<void> | undefined;
  let again = false;
  const work = (): void => {
    if (working) {
      again = true;
      return;
    }
    working = changed().finally(() => {
      working = undefined;
      if (again) {
        again = false;
        work();
      }
    });
  };
  const watcher = watchFiles([...folders], { ignoreInitial: true, ignored: (path) => ignored(path) });
  watcher.on('all', () => {
    clearTimeout(timer);
    timer = setTimeout(work, QUIET);
  });
  await new Promise<void>((resolve) => watcher.once('ready', () => resolve()));
  return {
    close: async () => {
      clearTimeout(timer);
      await watcher.close();
      await working;
    },
  };
}
