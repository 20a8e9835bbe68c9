import { studyProjects } from '../edition/study.ts';
import { languageFindings } from '../make/languages.ts';
import { readLabels } from '../make/package-files.ts';
import { findingsJson, printFindings } from '../proof/print.ts';
import { proofSettings } from '../proof/proof.ts';
import { proofEach } from '../proof/studied.ts';
import { mergeFindings } from '../proof/tell.ts';
import { isFailure } from '../proof/told.ts';
import { loadWorkspace } from '../shape/workspace.ts';
import { editionTables } from './editions.ts';
import { type CommandHost, type CommonOptions, inkFor } from './terminal.ts';
import { workspaceFolder } from './workspace-folder.ts';

type ProofOptions = CommonOptions & {
  readonly json?: boolean;
  readonly strict?: boolean;
  readonly editions?: boolean;
};

/** `sheetwright proof [workspace]` */
export function addProof({ program, terminal, done }: CommandHost): void {
  program
    .command('proof')
    .description('check every project and print what was found')
    .argument('[workspace]', 'the folder of projects (default: here, else projects/)')
    .option('--json', 'print one JSON array of findings and nothing else')
    .option('--strict', 'count warnings as errors')
    .option('--editions', 'print what each length becomes in the other edition')
    .option('--quiet', 'print findings only, no summary')
    .option('--no-color', 'print without color')
    .action(async (named: string | undefined, options: ProofOptions) => {
      const workspace = await loadWorkspace(workspaceFolder(named, terminal.cwd), {
        namedFrom: terminal.cwd,
      });
      const studies = await studyProjects(workspace.projects);
      const findings = mergeFindings([
        ...proofSettings(workspace),
        ...[...proofEach(workspace, studies).values()].flat(),
        ...languageFindings(workspace, readLabels()),
      ]);
      if (options.editions && !options.json) terminal.stdout.write(editionTables(studies));
      if (options.json) terminal.stdout.write(findingsJson(findings));
      else
        terminal.stdout.write(
          printFindings(findings, {
            ink: inkFor(terminal, options),
            projects: workspace.projects,
            summary: options.quiet !== true,
          }),
        );
      done(isFailure(findings, options.strict === true) ? 1 : 0);
    });
}
