import { once } from 'node:events';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { Kept, Recall, Spot } from '../recall/recall.ts';

/** Fewer are found by one thread before a second has begun. */
const MANY = 40;

/** What a second thread is handed: the projects, and how many of them either has begun with. */
export type ToFind = {
  readonly root: string;
  readonly namedFrom: string;
  readonly folders: readonly string[];
  readonly begun: Int32Array;
};

/**
 * Has what is to be found in many projects found by two threads, each taking the next that nobody has begun with. What
 * comes of it is the same; should the second thread break, what it had begun with is left to be found later.
 */
export async function findInTwo(recall: Recall, spots: readonly Spot[], namedFrom: string): Promise<void> {
  const thread = new URL('./finding-thread.js', import.meta.url);
  const isCompiled = fileURLToPath(import.meta.url).endsWith('.js');
  if (!isCompiled || spots.length < MANY || availableParallelism() < 2) return;
  const folders = spots.map(({ folder }) => folder);
  const begun = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
  const workerData: ToFind = { root: recall.texts.root, namedFrom, folders, begun };
  const worker = new Worker(thread, { workerData, execArgv: [] });
  const given = once(worker, 'message').catch(() => [[]]);
  for (let next = Atomics.add(begun, 0, 1); next < spots.length; next = Atomics.add(begun, 0, 1)) {
    const spot = spots[next];
    if (spot) await recall.give(spot);
  }
  const [found] = (await given) as [readonly (readonly [string, Kept])[]];
  for (const [folder, kept] of found) recall.take(folder, kept);
}
