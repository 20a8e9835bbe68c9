import { parentPort, workerData } from 'node:worker_threads';
import type { Kept, Recall } from '../recall/recall.ts';
import type { ToFind } from './find-in-two.ts';

/** Finds, project by project, whatever the other thread has not begun with. */
async function findOn({
  root,
  namedFrom,
  folders,
  begun,
}: ToFind): Promise<readonly (readonly [string, Kept])[]> {
  const [{ Recall }, { openExamination }] = await Promise.all([
    import('../recall/recall.ts'),
    import('../examine/examine.ts'),
  ]);
  const recall: Recall = await Recall.open(root, namedFrom, async (texts) => openExamination(texts));
  const spots = new Map(recall.spots.map((spot) => [spot.folder, spot]));
  const given: (readonly [string, Kept])[] = [];
  for (let next = Atomics.add(begun, 0, 1); next < folders.length; next = Atomics.add(begun, 0, 1)) {
    const spot = spots.get(folders[next] ?? '');
    const found = spot && (await recall.give(spot));
    if (found) given.push([spot.folder, found]);
  }
  return given;
}

parentPort?.postMessage(await findOn(workerData as ToFind));
