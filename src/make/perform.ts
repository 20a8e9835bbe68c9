import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import type { Note } from '../project/watch.ts';
import { printingDigest } from '../recall/program.ts';
import type { Recall } from '../recall/recall.ts';
import { sha256 } from '../recall/sealed.ts';
import type { OutputFile } from './files.ts';
import type { Job } from './job.ts';

import { type FileRecord, filesIn, type MadeRecord } from './records.ts';
import type { Stale } from './stale.ts';

/** A kind of output: the files to be made, which tell what they are made from. */
export type OutputKind = {
  readonly name: string;
  readonly jobsOf: (note: Note) => readonly Job[];
  /** In a preview it waits until the pages of what was saved are there. */
  readonly mayWait?: true | undefined;
};

/** Kinds of output to be made of the same thing, a project or the site. */
export type Task = {
  /** The project's folder; empty for the site. */
  readonly folder: string;
  readonly kinds: readonly OutputKind[];
  readonly before: MadeRecord | undefined;
  /** What of `before` no longer holds; or why all is made. */
  readonly stale: Stale | EverythingIs;
};

export type EverythingIs = 'new' | 'asked for';

/** Where a task is done. */
export type Workplace = Pick<Recall, 'inputs' | 'stamps'> & {
  /** The output folder, absolute. */
  readonly out: string;
  /** Whether PDFs are made; else those of the last time stay where they are. */
  readonly pdf: boolean;
  /** The one PDF that is printed, where it is one: the others stay as PDFs do that are not made. */
  readonly onlyPdf?: string | undefined;
  /** Whether a kind that was made before is left for the next make. */
  readonly isLeft: (kind: OutputKind) => boolean;
  /** Told before each file that is made. */
  readonly working: (path: string) => void;
};

/** A file that was made, and the inputs that are another than the last time. */
type MadeFile = OutputFile & { readonly why: readonly string[] };

export type Performance = {
  readonly files: readonly MadeFile[];
  readonly record: MadeRecord;
  /** What was made the last time and is no longer. */
  readonly gone: readonly string[];
};

/** Makes what is stale. Nothing is written yet: if one file cannot be made, none of the others has replaced anything. */
export async function perform(task: Task, bench: Workplace): Promise<Performance> {
  const { folder, kinds, before, stale } = task;
  const begun: BegunKind[] = [];
  const failure = new AbortController();
  const outputs: Record<string, MadeRecord['outputs'][string]> = {};
  for (const kind of kinds) {
    const { name, jobsOf } = kind;
    const last = before?.outputs[name];
    const why = typeof stale === 'string' ? [stale] : stale.get(name);
    if (last && !why) {
      outputs[name] = last;
      continue;
    }
    if (last && bench.isLeft(kind)) {
      outputs[name] = { ...last, isDue: true };
      continue;
    }
    const uses = new Set(['program']);
    const jobs = jobsOf((input) => uses.add(input));
    if (jobs.some(({ isPrinted }) => isPrinted)) uses.add('browser');
    const wanted = jobs.filter(({ isPrinted, path }) => !isPrinted || (bench.onlyPdf ?? path) === path);
    const all = await beginJobs(wanted, typeof stale === 'string' ? undefined : last?.files, bench, failure);
    begun.push({ name, uses, jobs: all, why: why ?? [] });
    // Its place among the others.
    outputs[name] = { uses: [], files: {} };
  }
  const files: MadeFile[] = [];
  const areKept = !bench.pdf || bench.onlyPdf !== undefined;
  for (const { name, uses, jobs, why } of begun) {
    const made = await finish(jobs);
    files.push(...made.files.map((file) => ({ ...file, why })));
    const kept = Object.entries(before?.outputs[name]?.files ?? {}).filter(
      ([path]) => areKept && path.endsWith('.pdf'),
    );
    outputs[name] = { uses: [...uses].sort(), files: { ...Object.fromEntries(kept), ...made.records } };
  }
  const uses = new Set(Object.values(outputs).flatMap((output) => output.uses));
  const record = { inputs: bench.inputs.trace(folder, uses), outputs };
  const now = filesIn(record);
  return { files, record, gone: Object.keys(filesIn(before)).filter((path) => !(path in now)) };
}

/** A job that is kept as it was, or done, or being done. */
type BegunJob = { readonly path: string } & (
  | { readonly kept: FileRecord }
  | { readonly from: string | undefined; readonly bytes: ReturnType<Job['produce']> }
);

type BegunKind = {
  readonly name: string;
  readonly uses: ReadonlySet<string>;
  readonly jobs: readonly BegunJob[];
  readonly why: readonly string[];
};

/**
 * Begins jobs, but for slow ones whose sources are what they were and whose files are still there untouched. While what is
 * printed or painted waits for its turn, the next is drawn, unless one has failed.
 */
async function beginJobs(
  jobs: readonly Job[],
  last: Readonly<Record<string, FileRecord>> | undefined,
  { inputs, stamps, out, working }: Workplace,
  failure: AbortController,
): Promise<readonly BegunJob[]> {
  const begun: BegunJob[] = [];
  for (const { path, from: sources, isPrinted, produce } of jobs) {
    const maker = isPrinted
      ? [printingDigest(), inputs.digest('', 'browser')]
      : [inputs.digest('', 'program')];
    // What a page that is printed meanwhile waits for is seen to first.
    await setImmediate();
    failure.signal.throwIfAborted();
    const from = sources && sha256([...maker, sources()].join('\n'));
    const before = last?.[path];
    if (
      before?.from !== undefined &&
      before.from === from &&
      stamps.digestOf(join(out, path)) === before.sha256
    ) {
      begun.push({ path, kept: before });
      continue;
    }
    working(path);
    const bytes = produce();
    begun.push({ path, from, bytes });
    if (bytes instanceof Promise) bytes.catch((error: unknown) => failure.abort(error));
  }
  return begun;
}

type Done = { readonly files: readonly OutputFile[]; readonly records: Readonly<Record<string, FileRecord>> };

async function finish(jobs: readonly BegunJob[]): Promise<Done> {
  const files: OutputFile[] = [];
  const records: Record<string, FileRecord> = {};
  for (const job of jobs) {
    const { path } = job;
    if ('kept' in job) {
      records[path] = job.kept;
      continue;
    }
    const { from } = job;
    const bytes = await job.bytes;
    files.push({ path, bytes });
    records[path] = { ...(from === undefined ? {} : { from }), sha256: sha256(bytes) };
  }
  return { files, records };
}
