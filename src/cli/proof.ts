import { examine, findingsOf } from '../examine/examine.ts';
import { languageFindings } from '../make/languages.ts';
import { readLabels } from '../make/package-files.ts';
import { findingsJson, printFindings } from '../proof/print.ts';
import { mergeFindings } from '../proof/tell.ts';
import { isFailure } from '../proof/told.ts';
import { loadWorkspace } from '../shape/workspace.ts';
import { editionTables } from './editions.ts';
import { type CommandRun, type CommonOptions, inkFor } from './terminal.ts';
import { workspaceFolder } from './workspace-folder.ts';

type ProofOptions = CommonOptions & {
  readonly json?: boolean;
  readonly strict?: boolean;
  readonly editions?: boolean;
};

/** `sheetwright proof [workspace]` */
export const run: CommandRun<ProofOptions> = async ([named], options, terminal) => {
  const { stdout, cwd } = terminal;
  const workspace = await loadWorkspace(workspaceFolder(named, cwd), { namedFrom: cwd });
  const studies = examine(workspace);
  const findings = mergeFindings([
    ...findingsOf(workspace, studies),
    ...languageFindings(workspace, readLabels()),
  ]);
  if (options.editions && !options.json) stdout.write(editionTables(studies));
  if (options.json) stdout.write(findingsJson(findings));
  else
    stdout.write(
      printFindings(findings, {
        ink: inkFor(terminal, options),
        projects: workspace.projects,
        summary: options.quiet !== true,
      }),
    );
  return isFailure(findings, options.strict === true) ? 1 : 0;
};
