import type { Project, Workspace } from '../project/model.ts';
import { putFiles, removeFiles, sha256, type Written } from './files.ts';
import type { MakeOptions } from './make.ts';
import type { Job, Studio } from './output.ts';
import { outputs } from './outputs/index.ts';
import {
  type Card,
  type Made,
  type MakeRecord,
  type ProjectRecord,
  RECORD_PATH,
  recordText,
} from './record.ts';
import { doJobs } from './work.ts';

/** One project's part of a make: its jobs, and what the index shows of it. */
export type Plan = { readonly project: Project; readonly card: Card; readonly jobs: readonly Job[] };

/** A make that is ready to be carried out. */
export type Order = {
  readonly options: MakeOptions;
  readonly studio: Studio;
  readonly workspace: Workspace;
  /** One by one: what a project is made from, its photos and pages, need not be held longer than it takes. */
  readonly plans: AsyncIterable<Plan>;
  readonly last: MakeRecord;
};

type Files = Readonly<Record<string, Made>>;

/**
 * Makes project by project, then the site's own pages; each project's files are put in place together. What is no
 * longer made is removed, and the pages of projects that are gone with it. The record follows every step, so that a
 * make that is broken off need not do again what it did.
 */
export async function writeOutputs(order: Order): Promise<readonly Written[]> {
  const { options, plans, last, studio } = order;
  const written: Written[] = [];
  const perform = async (jobs: readonly Job[], before: Files): Promise<Files> => {
    const { files, made } = await doJobs(jobs, before, {
      out: options.out,
      version: studio.files.version,
      all: options.all === true,
      working: (path) => options.progress?.working(path),
    });
    written.push(...(await putFiles(options.out, files)));
    const now = { ...(studio.pdf ? {} : pdfsOf(before)), ...made };
    await removeFiles(
      options.out,
      Object.keys(before).filter((path) => !(path in now)),
    );
    return now;
  };
  const projects: Record<string, ProjectRecord> = await withoutTheGone(order);
  const write = (site: Files): Promise<Written[]> => {
    const text = recordText({ sheetwright: studio.files.version, projects: inOrder(projects), site });
    return putFiles(options.out, [{ path: RECORD_PATH, bytes: new TextEncoder().encode(text) }]);
  };
  for await (const { project, card, jobs } of plans) {
    const files = await perform(jobs, last.projects[project.slug]?.files ?? {});
    projects[project.slug] = recordOf(project, card, files);
    await write(last.site);
  }
  const cards = Object.values(projects).map(({ card }) => card);
  const siteJobs = await Promise.all(
    outputs.map((output) => output.ofSite?.({ ...studio, cards, today: options.today }) ?? []),
  );
  const site = await perform(siteJobs.flat(), last.site);
  return [...written, ...(await write(site))];
}

function recordOf({ folder, file }: Project, card: Card, files: Files): ProjectRecord {
  return { source: `${folder}/sheet.md`, sha256: sha256(file.text), card, files };
}

/** The last record's projects, less those whose folder is gone; their files go too. */
async function withoutTheGone({ options, workspace, last }: Order): Promise<MakeRecord['projects']> {
  const there = new Set(workspace.projects.map(({ slug }) => slug));
  const gone = Object.entries(last.projects).filter(([slug]) => !there.has(slug));
  await removeFiles(
    options.out,
    gone.flatMap(([, { files }]) => Object.keys(files)),
  );
  return Object.fromEntries(Object.entries(last.projects).filter(([slug]) => there.has(slug)));
}

/** A make without PDFs leaves those of the last time where they are. */
function pdfsOf(files: Files): Files {
  return Object.fromEntries(Object.entries(files).filter(([path]) => path.endsWith('.pdf')));
}

function inOrder(projects: MakeRecord['projects']): MakeRecord['projects'] {
  return Object.fromEntries(Object.entries(projects).sort(([a], [b]) => (a < b ? -1 : 1)));
}
