import { constants } from 'node:fs';
import { access, readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { isStaged, putFiles, Unwritable, unwritable } from '../make/files.ts';
import { make } from '../make/make.ts';
import type { MakeOptions, MakeResult } from '../make/make-options.ts';
import { LEDGER_FILE, type Ledger } from '../project/ledger/ledger.ts';
import { ledgerText } from '../project/ledger/ledger-format.ts';
import type { Project } from '../project/model.ts';
import { checkKeepable, keepPrints } from './keep.ts';
import { lastOf, nextLedger, type Published } from './revisions.ts';

export type PublishResult = MakeResult & {
  readonly published: readonly Published[];
  /** Why the handouts of projects could not be kept, a line each. */
  readonly unkept: readonly string[];
};

/**
 * Makes the workspace with a new revision for each project whose measurements or steps changed since the last one. A
 * revision is recorded in the project's ledger just before its pages are put in place: if this ends between the two, the
 * next make or publish finds the ledger changed and makes them. A project that is held because of an error is not
 * published. Publishing again without a change records nothing.
 * @throws As `make` does; what was recorded until then stays.
 */
export async function publish(options: MakeOptions): Promise<PublishResult> {
  const projects = new Map<string, Project>();
  const latest = new Map<string, number>();
  const published: Published[] = [];
  const unkept: string[] = [];
  const result = await make({
    ...options,
    ledgerOf: (study) => {
      projects.set(study.project.folder, study.project);
      const { folder, ledger } = study.project;
      const next = nextLedger(study, options.today);
      const [last] = lastOf(study.project, next ?? ledger);
      if (last) latest.set(folder, last.revision.number);
      return next;
    },
    record: async (folder, ledger) => {
      await putLedger(join(options.root, folder), ledger);
      const project = projects.get(folder);
      if (project) published.push(...lastOf(project, ledger));
    },
  });
  if (options.pdf && options.onlyPdf === undefined) {
    const { texts } = result.recall;
    const { site } = await result.recall.commons();
    const kept = { texts, out: options.out };
    for (const spot of result.spots.filter(({ slug }) => result.made.includes(slug))) {
      const revision = latest.get(spot.folder);
      if (revision === undefined) continue;
      await keepPrints(kept, spot, revision, site).catch((error) => unkept.push(refusalOf(error)));
    }
  }
  const order = result.spots.map(({ folder }) => folder);
  published.sort((a, b) => order.indexOf(a.project.folder) - order.indexOf(b.project.folder));
  return { ...result, published, unkept };
}

/** What is said where something cannot be written. @throws anything else. */
function refusalOf(error: unknown): string {
  if (error instanceof Unwritable) return error.message;
  throw error;
}

/** Writes a ledger, and clears away what was left of one by a publish that was killed. */
async function putLedger(folder: string, ledger: Ledger): Promise<void> {
  for (const name of await readdir(folder)) {
    if (name.startsWith(LEDGER_FILE) && isStaged(name)) await rm(join(folder, name), { force: true });
  }
  await putFiles(folder, [{ path: LEDGER_FILE, bytes: ledgerText(ledger) }]);
}

/** @throws Unwritable when a ledger could not be written, or with PDFs handouts not kept, before anything is done. */
export async function checkRecordable(
  root: string,
  published: readonly Published[],
  pdf: boolean,
): Promise<void> {
  for (const { project, revision } of published) {
    const folder = join(root, project.folder);
    await access(folder, constants.W_OK).catch((error: unknown) => {
      throw unwritable(folder, error);
    });
    if (pdf) await checkKeepable(root, project.folder, revision.number);
  }
}
