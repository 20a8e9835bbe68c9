import { join } from 'node:path';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { openExamination } from '../../src/examine/examine.ts';
import { Recall } from '../../src/recall/recall.ts';
import { examineTogether } from '../../src/recall/together.ts';
import { builtPackage } from '../built.ts';
import { folderWith } from '../cli/terminal.ts';

const SHEET = `---
title: Card
measurements:
  unit: in
  stock:
    cream: { use: shared.stock.cream }
  pieces:
    card: { stock: cream, cut: 2 x 4000 }
---
A card, ![of some kind](card.jpg).

## Cut it
Cut :piece[card].
`;

const SHARED =
  'unit: in\nstock:\n  cream: { name: Cream cardstock, sheet: 8 1/2 x 11, grain: none at all }\n';

/** Fifty cards, each with something wrong in it, in a file that all use, and in one that cannot be read as text. */
const FILES = {
  'shared/papers.yaml': SHARED,
  'binary/sheet.md': new Uint8Array([0, 1, 2]),
  ...Object.fromEntries(Array.from({ length: 50 }, (_, card) => [`card-${card}/sheet.md`, SHEET])),
};

const openRecall = (root: string): Promise<Recall> =>
  Recall.open(root, root, async (texts) => openExamination(texts));

/** All that is known in the end, with what each follows from. */
async function foundBy(recall: Recall): Promise<unknown> {
  const found = await Promise.all(recall.spots.map((spot) => recall.findings(spot)));
  return [found, await recall.languages(recall.spots)];
}

type Threads = NonNullable<Parameters<typeof examineTogether>[2]>;

/** What another thread runs, as it is bundled. */
let script: string;
beforeAll(async () => {
  script = join(await builtPackage(), 'dist', 'lib', 'examiner.js');
});

/** Examines together, with this thread waiting until others are done with all but those it took first. */
async function examineWith(recall: Recall, threads: Threads, others: number): Promise<number> {
  const own = vi.spyOn(recall, 'findings');
  const theirs = vi.spyOn(recall, 'keepFound');
  const findings = Recall.prototype.findings.bind(recall);
  own.mockImplementation(async (spot) => {
    await vi.waitUntil(() => theirs.mock.calls.length >= others, { timeout: 60_000 });
    return findings(spot);
  });
  await examineTogether(recall, recall.spots, threads);
  own.mockRestore();
  return theirs.mock.calls.length;
}

describe('projects examined in several threads', () => {
  it('have the same findings, as data in the cache too, as in one', async () => {
    const root = folderWith(FILES);
    const [alone, together] = [await openRecall(root), await openRecall(root)];
    expect(await examineWith(together, { script, count: 2 }, 50)).toBe(50);
    expect(together.forgotten(together.spots)).toHaveLength(0);
    expect(await foundBy(together)).toEqual(await foundBy(alone));
    together.save();
    const later = await openRecall(root);
    expect(later.forgotten(later.spots)).toHaveLength(0);
    expect(await foundBy(later)).toEqual(await foundBy(alone));
  });

  it('are taken up as they are found, not when all are', async () => {
    const recall = await openRecall(folderWith(FILES));
    const theirs = vi.spyOn(recall, 'keepFound');
    const findings = Recall.prototype.findings.bind(recall);
    const taken: number[] = [];
    vi.spyOn(recall, 'findings').mockImplementation(async (spot) => {
      taken.push(theirs.mock.calls.length);
      const began = performance.now();
      while (performance.now() - began < 60);
      return findings(spot);
    });
    await examineTogether(recall, recall.spots, { script, count: 2 });
    expect(taken.at(-1)).toBeGreaterThan(0);
  });

  it('are found here where a thread dies on the way', async () => {
    const folder = folderWith({
      'dies.mjs': `import { workerData } from 'node:worker_threads';
        Atomics.add(workerData.taken, 0, 40);
        throw new Error('out of something');`,
    });
    const root = folderWith(FILES);
    const [alone, together] = [await openRecall(root), await openRecall(root)];
    await examineTogether(together, together.spots, {
      script: join(folder, 'dies.mjs'),
      count: 2,
    });
    expect(await foundBy(together)).toEqual(await foundBy(alone));
  });

  it('start none for a few, on one core, or where nothing is bundled', async () => {
    const recall = await openRecall(folderWith(FILES));
    const few = recall.spots.slice(0, 10);
    await examineTogether(recall, few, { script, count: 2 });
    await examineTogether(recall, recall.spots, { script, count: 1 });
    await examineTogether(recall, recall.spots, { script: undefined, count: 2 });
    expect(recall.forgotten(recall.spots)).toHaveLength(51);
  });
});
