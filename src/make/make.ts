import { type Study, studyProjects } from '../edition/study.ts';
import { openPrinter } from '../print/printer.ts';
import type { Ledger } from '../project/ledger.ts';
import type { Workspace } from '../project/model.ts';
import type { Finding } from '../proof/finding.ts';
import { inOrder, proofFindings } from '../proof/proof.ts';
import { mergeFindings, proofEach } from '../proof/studied.ts';
import { loadWorkspace } from '../shape/workspace.ts';
import type { Written } from './files.ts';
import { languageFindings } from './languages.ts';
import { withLock } from './lock.ts';
import { projectsNamed } from './named.ts';
import { readPackageFiles } from './package-files.ts';
import { Plans } from './plans.ts';
import { readRecord } from './record.ts';
import { openStudio } from './studio.ts';
import type { Progress } from './work.ts';
import { writeOutputs } from './write-outputs.ts';

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
  readonly progress?: Progress | undefined;
  /** The ledger to make a project with, where it is not the one on disk: one with a revision about to be published. */
  readonly ledgerOf?: ((study: Study) => Ledger) | undefined;
};

export type MakeResult = {
  readonly workspace: Workspace;
  /** The projects that were looked at, with all that was worked out of them. */
  readonly studies: readonly Study[];
  /** Of the settings, the shared files and those projects. */
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
 * @throws NoSuchProject before anything is done. @throws Unwritable, BrowserMissing or PrintFault, each with a remedy
 * in one line; what was made until then is whole and need not be made again.
 */
export async function make(options: MakeOptions): Promise<MakeResult> {
  const workspace = await loadWorkspace(options.root, { namedFrom: options.namedFrom });
  const wanted = projectsNamed(options.only, workspace.projects);
  return withLock(options.out, async () => {
    const files = readPackageFiles();
    const studies = await studyProjects(wanted);
    const proofs = proofEach(workspace, studies);
    const findings = [
      ...mergeFindings(workspace, proofs),
      ...proofFindings(languageFindings({ ...workspace, projects: wanted }, files.labels)),
    ];
    const printer = openPrinter(options.browser === undefined ? {} : { browser: options.browser });
    try {
      const studio = openStudio(workspace.site, files, printer, options);
      const plans = new Plans({ options, workspace, studio, proofs, studies });
      const written = await writeOutputs({
        options,
        studio,
        workspace,
        plans,
        last: await readRecord(options.out),
      });
      const { held, made } = plans;
      return {
        workspace,
        studies,
        findings: inOrder([...findings, ...plans.findings]),
        written,
        held,
        made,
      };
    } finally {
      options.progress?.end();
      await printer.close();
    }
  });
}
