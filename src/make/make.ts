import { join } from 'node:path';
import { examine, findingsOf, type Study } from '../examine/examine.ts';
import { openPrinter } from '../print/printer.ts';
import type { Ledger } from '../project/ledger/ledger.ts';
import type { Workspace } from '../project/model.ts';
import { isStopped, mergeFindings } from '../proof/tell.ts';
import type { Told } from '../proof/told.ts';
import { loadWorkspace } from '../shape/workspace.ts';
import { cardOf } from './card.ts';
import type { Written } from './files.ts';
import { labelsOf, languageFindings } from './languages.ts';
import { withLock } from './lock.ts';
import { projectsNamed } from './named.ts';
import { openStudio, type ProjectMaterial, type Studio } from './output.ts';
import { OutputFolder } from './output-folder.ts';
import { outputs } from './outputs/index.ts';
import { readPackageFiles } from './package-files.ts';
import { type ProjectPicture, readPictures } from './pictures.ts';

/** Told what a make is at. */
export type MakeProgress = {
  readonly begin: (projects: number) => void;
  /** Before each file that is made. */
  readonly working: (path: string) => void;
  /** After each project. */
  readonly passed: () => void;
  readonly end: () => void;
};

export type MakeOptions = {
  /** The workspace's folder and the output folder, absolute. */
  readonly root: string;
  readonly out: string;
  /** The folder that paths in messages are relative to. */
  readonly namedFrom: string;
  /** Only the projects with these slugs; else all. */
  readonly only?: readonly string[] | undefined;
  /** Make everything again, whatever was made before. */
  readonly all?: boolean | undefined;
  readonly pdf: boolean;
  /** PDFs that are left out now are made once somebody asks for them: pages lead to them all the same. */
  readonly pdfsLater?: boolean | undefined;
  /** Warnings stop a project as errors do. */
  readonly strict?: boolean | undefined;
  /** The browser's program, if one is named. */
  readonly browser?: string | undefined;
  /** The day the site is made, `YYYY-MM-DD`: sessions from it on are to come. */
  readonly today: string;
  readonly progress?: MakeProgress | undefined;
  /** The ledger to make a project with, where it is not the one on disk: one with a revision about to be published. */
  readonly ledgerOf?: ((study: Study) => Ledger) | undefined;
};

export type MakeResult = {
  readonly workspace: Workspace;
  /** The projects that were looked at, with all that was worked out of them. */
  readonly studies: readonly Study[];
  /** Of the settings, the shared files and those projects. */
  readonly findings: readonly Told[];
  /** What happened to each file that was looked at. */
  readonly written: readonly Written[];
  /** Slugs of projects that keep their last good output because of a finding. */
  readonly held: readonly string[];
  /** Slugs of the projects that are now as their sources say. */
  readonly made: readonly string[];
};

/**
 * Proofs a workspace and makes what changed since the last time. A project with an error keeps its last good
 * output; the others are made.
 * @throws NoSuchProject before anything is done. @throws Unwritable, BrowserMissing or PrintFault, each with a remedy
 * in one line; what was made until then is whole and need not be made again.
 */
export async function make(options: MakeOptions): Promise<MakeResult> {
  const { root, out, namedFrom, progress, strict = false } = options;
  const workspace = await loadWorkspace(root, { namedFrom });
  const wanted = projectsNamed(options.only, workspace.projects);
  return withLock(out, async () => {
    const files = readPackageFiles();
    const studies = examine(workspace, wanted);
    const findings = [
      ...findingsOf(workspace, studies),
      ...languageFindings({ ...workspace, projects: wanted }, files.labels),
    ];
    const printer = openPrinter({ browser: options.browser });
    try {
      const studio = openStudio(workspace.site, files, printer, options);
      const folder = await openFolder(options, workspace, studio);
      const [held, made]: [string[], string[]] = [[], []];
      const cache = join(out, '.cache', 'pictures');
      progress?.begin(studies.length);
      for (const study of studies) {
        const { project } = study;
        const shown = await readPictures(join(root, project.folder), project, cache);
        findings.push(...shown.findings);
        const own = [...workspace.site.findings, ...study.findings, ...shown.findings];
        const isHeld = isStopped(own, strict);
        if (!isHeld) await makeProject(study, shown.pictures, studio, folder, options);
        (isHeld ? held : made).push(project.slug);
        progress?.passed();
      }
      await makeSite(studio, folder, options);
      const { written } = folder;
      return { workspace, studies, findings: mergeFindings(findings), written, held, made };
    } finally {
      progress?.end();
      await printer.close();
    }
  });
}

function openFolder(options: MakeOptions, { projects }: Workspace, studio: Studio): Promise<OutputFolder> {
  const { out, all = false, progress } = options;
  const { pdf, files } = studio;
  const working = (path: string): void => progress?.working(path);
  const slugs = projects.map(({ slug }) => slug);
  return OutputFolder.open({ out, version: files.version, all, pdf, working }, slugs);
}

/** What a project is made from, its photos and pages, is held no longer than it takes. */
async function makeProject(
  study: Study,
  pictures: readonly ProjectPicture[],
  studio: Studio,
  folder: OutputFolder,
  { ledgerOf }: MakeOptions,
): Promise<void> {
  const { project, editions } = study;
  const labels = labelsOf(project, studio.site, studio.files.labels);
  const ledger = ledgerOf?.(study) ?? project.ledger;
  const own = { ...studio, labels, slug: project.slug, editions, ledger, pictures };
  const downloads = outputs.flatMap((output) => output.downloads?.(own) ?? []);
  const material: ProjectMaterial = { ...own, downloads };
  const jobs = outputs.flatMap((output) => output.ofProject?.(material) ?? []);
  await folder.putProject(project, cardOf(material), jobs);
}

async function makeSite(studio: Studio, folder: OutputFolder, { today }: MakeOptions): Promise<void> {
  const material = { ...studio, cards: folder.cards, today };
  await folder.putSite(outputs.flatMap((output) => output.ofSite?.(material) ?? []));
}
