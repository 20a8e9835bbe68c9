import { availableParallelism } from 'node:os';
import { setImmediate } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import type { WorkspaceTexts } from '../project/workspace-texts.ts';
import type { Found, Worked } from './found.ts';
import { bundledFile } from './program.ts';
import type { Recall, Spot } from './recall.ts';

/** The texts of a workspace as plain data. */
type TextsData = Omit<WorkspaceTexts, 'findPicture' | 'readFont' | 'readDrawing'>;

/** What another thread is given: all texts as they were read once, and the projects, of which each thread takes the next. */
export type ExaminerTask = {
  readonly texts: TextsData;
  readonly folders: readonly string[];
  /** How many have been taken. */
  readonly taken: Int32Array<SharedArrayBuffer>;
};

/** What another thread found in a project. */
export type ExaminerReport = { readonly folder: string; readonly found: Worked<Found> };

/** What the other threads run, if there is such a file, and how many threads there are at most, with this one. */
type Threads = { readonly script: string | undefined; readonly count: number };

/** A thread loads the program before it takes its first project, by when we have examined so many. */
const WORTH_A_THREAD = 40;

/** Each more takes sixty to a hundred megabytes, for a program of its own; two stay below three hundred. */
const MOST_THREADS = 2;

/** Less than usual for what is soon forgotten; in megabytes. It costs no time and saves twenty a thread. */
const YOUNG = 16;

/**
 * Examines the projects of which nothing is known in several threads, where they are enough to pay for that, this one
 * among them. What a thread leaves behind that dies is found as if it had never been there: by whoever asks.
 */
export async function examineTogether(
  recall: Recall,
  spots: readonly Spot[],
  threads: Threads = {
    script: bundledFile('examiner.js'),
    count: Math.min(MOST_THREADS, availableParallelism()),
  },
): Promise<void> {
  const forgotten = recall.forgotten(spots);
  const others = Math.min(threads.count - 1, Math.floor(forgotten.length / WORTH_A_THREAD));
  const { script } = threads;
  if (others < 1 || script === undefined) return;
  const { root, files, folders, findings } = recall.texts;
  const texts = { root, files, findings, ...(folders && { folders }) };
  const taken = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
  const task: ExaminerTask = { texts, folders: forgotten.map(({ folder }) => folder), taken };
  const ended = Array.from({ length: others }, () => ask(script, task, recall));
  for (let spot = next(taken, forgotten); spot; spot = next(taken, forgotten)) {
    await recall.findings(spot);
    recall.release(spot);
    // What others found is taken up at once, while the files it followed from are still as they were read.
    await setImmediate();
  }
  await Promise.all(ended);
}

/** The next of a list that no thread has taken. */
export function next<T>(taken: ExaminerTask['taken'], list: readonly T[]): T | undefined {
  return list[Atomics.add(taken, 0, 1)];
}

/** Starts a thread that examines what it takes. Resolves once it has ended, whichever way. */
function ask(script: string, task: ExaminerTask, recall: Recall): Promise<void> {
  const thread = new Worker(script, {
    workerData: task,
    resourceLimits: { maxYoungGenerationSizeMb: YOUNG },
  });
  thread.on('message', ({ folder, found }: ExaminerReport) => recall.keepFound({ folder }, found));
  // One that dies, of memory or of a mistake of ours, ends like any other.
  thread.on('error', () => {});
  return new Promise((resolve) => {
    thread.once('exit', () => resolve());
  });
}
