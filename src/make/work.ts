import { join } from 'node:path';
import { type OutputFile, readIfThere, sha256 } from './files.ts';
import type { Job } from './output.ts';
import type { Made } from './record.ts';

/** Told what a make is at. */
export type Progress = {
  readonly begin: (projects: number) => void;
  /** Before each file that is made. */
  readonly working: (path: string) => void;
  /** After each project. */
  readonly passed: () => void;
  readonly end: () => void;
};

export type WorkOptions = {
  readonly out: string;
  /** Whose work it is: what another version made is made again. */
  readonly version: string;
  /** Make everything again, whatever was made before. */
  readonly all: boolean;
  readonly working: (path: string) => void;
};

export type Work = {
  readonly files: readonly OutputFile[];
  /** For the record: every job's file, remade or kept. */
  readonly made: Readonly<Record<string, Made>>;
};

/**
 * Does the jobs, skipping a slow one whose sources are what they were and whose file is still there untouched.
 * Nothing is written yet: if one job fails, nothing of the others has replaced anything.
 */
export async function doJobs(
  jobs: readonly Job[],
  last: Readonly<Record<string, Made>>,
  { out, version, all, working }: WorkOptions,
): Promise<Work> {
  const files: OutputFile[] = [];
  const made: Record<string, Made> = {};
  for (const job of jobs) {
    const from = job.from === undefined ? undefined : sha256(`${version}\n${job.from}`);
    const before = last[job.path];
    if (!all && from !== undefined && before?.from === from && (await isUntouched(out, job.path, before))) {
      made[job.path] = before;
      continue;
    }
    working(job.path);
    const product = await job.produce();
    const bytes = typeof product === 'string' ? new TextEncoder().encode(product) : product;
    files.push({ path: job.path, bytes });
    made[job.path] = { ...(from === undefined ? {} : { from }), sha256: sha256(bytes) };
  }
  return { files, made };
}

async function isUntouched(out: string, path: string, before: Made): Promise<boolean> {
  const bytes = await readIfThere(join(out, path));
  return bytes !== undefined && sha256(bytes) === before.sha256;
}
