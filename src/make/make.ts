import { join } from 'node:path';
import { openPrinter } from '../print/printer.ts';
import type { Ledger } from '../project/ledger.ts';
import { loadWorkspace } from '../project/load.ts';
import type { Workspace } from '../project/model.ts';
import { type Finding, isFailure } from '../proof/finding.ts';
import { proofFaults, proofSite } from '../proof/proof.ts';
import { proofEach, together } from '../proof/studied.ts';
import { type Study, studyProjects } from '../shape/edition/study.ts';
import type { Labels } from '../sheet/labels.ts';
import { cardOf } from './card.ts';
import { carryOut, type Plan } from './carry-out.ts';
import { labelsOf, languageFaults } from './languages.ts';
import { checkWritable, type Written } from './output.ts';
import { outputs } from './outputs/index.ts';
import { readPackageFiles } from './package-files.ts';
import { readPictures } from './pictures.ts';
import { readRecord } from './record.ts';
import { openStudio } from './studio.ts';
import type { Progress } from './work.ts';

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
  /** Warnings stop a project as errors do. */
  readonly strict?: boolean | undefined;
  /** The browser's program, if one is named. */
  readonly browser?: string | undefined;
  /** The day the site is made, `YYYY-MM-DD`: sessions from it on are to come. */
  readonly today: string;
  readonly progress: Progress;
  /** The ledger to make a project with, where it is not the one on disk: one with a revision about to be published. */
  readonly ledgerOf?: ((study: Study, labels: Labels) => Ledger) | undefined;
};

export type MakeResult = {
  readonly workspace: Workspace;
  readonly findings: readonly Finding[];
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
 * @throws Unwritable, BrowserMissing or PrintFault, each with a remedy in one line.
 */
export async function make(options: MakeOptions): Promise<MakeResult> {
  const { root, out } = options;
  await checkWritable(out);
  const last = await readRecord(out);
  const workspace = await loadWorkspace(root, { namedFrom: options.namedFrom });
  const studies = await studyProjects(workspace.projects);
  const files = readPackageFiles();
  const ofProjects = proofEach(workspace, studies);
  const ofSite = proofSite(workspace);
  const findings = [
    ...together(workspace, ofProjects),
    ...proofFaults(languageFaults(workspace, files.labels)),
  ];
  const cache = { folder: join(out, '.cache', 'pictures') };
  const printer = openPrinter(options.browser === undefined ? {} : { browser: options.browser });
  try {
    const studio = openStudio(workspace.site, files, printer, options.pdf);
    const wanted = studies.filter(({ project }) => options.only?.includes(project.slug) ?? true);
    const plans: Plan[] = [];
    const held: string[] = [];
    for (const study of wanted) {
      const { project, worked } = study;
      const { pictures, faults } = await readPictures(join(root, project.folder), project, cache);
      const ofPictures = proofFaults(faults);
      findings.push(...ofPictures);
      const own = [...ofSite, ...(ofProjects.get(project) ?? []), ...ofPictures];
      if (isFailure(own, options.strict === true)) {
        held.push(project.slug);
        continue;
      }
      const labels = labelsOf(project, workspace.site, files.labels);
      const ledger = options.ledgerOf?.(study, labels) ?? project.ledger;
      const material = { ...studio, labels, slug: project.slug, editions: worked.editions, ledger, pictures };
      const jobs = await Promise.all(outputs.map((output) => output.ofProject?.(material) ?? []));
      plans.push({
        project,
        card: cardOf(material),
        jobs: jobs.flat(),
      });
    }
    const written = await carryOut({ options, studio, workspace, plans, last });
    return { workspace, findings, written, held, made: plans.map(({ project }) => project.slug) };
  } finally {
    options.progress.end();
    await printer.close();
  }
}
