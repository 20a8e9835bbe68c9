import type { Project, Workspace } from '../project/model.ts';
import type { MakeOptions } from './make.ts';
import { putFiles, removeFiles, sha256, type Written } from './output.ts';
import type { Job, Studio } from './output-kind.ts';
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
  readonly plans: readonly Plan[];
  readonly last: MakeRecord;
};

type Files = Readonly<Record<string, Made>>;

/**
 * Makes project by project, then the site's own pages, then the record; each project's files are put in place
 * together. What is no longer made is removed, and the pages of projects that are gone with it.
 */
export async function carryOut(order: Order): Promise<readonly Written[]> {
  const { options, plans, last, studio } = order;
  const written: Written[] = [];
  const perform = async (jobs: readonly Job[], before: Files): Promise<Files> => {
    const all = options.all === true || last.sheetwright !== studio.files.version;
    const { files, made } = await doJobs(options.out, jobs, before, {
      all,
      working: options.progress.working,
    });
    written.push(...(await putFiles(options.out, files)));
    const now = { ...(studio.pdf ? {} : pdfsOf(before)), ...made };
    await removeFiles(
      options.out,
      Object.keys(before).filter((path) => !(path in now)),
    );
    return now;
  };
  options.progress.begin(plans.reduce((total, { jobs }) => total + jobs.length, 0));
  const projects: Record<string, ProjectRecord> = await withoutTheGone(order);
  for (const { project, card, jobs } of plans) {
    const files = await perform(jobs, last.projects[project.slug]?.files ?? {});
    projects[project.slug] = {
      source: project.file.path,
      sha256: sha256(project.file.text),
      card,
      files,
    };
  }
  const cards = Object.values(projects).map(({ card }) => card);
  const siteJobs = await Promise.all(
    outputs.map((output) => output.ofSite?.({ ...studio, cards, today: options.today }) ?? []),
  );
  const site = await perform(siteJobs.flat(), last.site);
  const record = recordText({ sheetwright: studio.files.version, projects: inOrder(projects), site });
  written.push(
    ...(await putFiles(options.out, [{ path: RECORD_PATH, bytes: new TextEncoder().encode(record) }])),
  );
  return written;
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
