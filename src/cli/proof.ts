import { findAll } from '../make/find.ts';
import { findingsJson, printFindings } from '../proof/print.ts';
import { isFailure } from '../proof/told.ts';
import { Recall, type Spot } from '../recall/recall.ts';
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
  const recall = await Recall.open(workspaceFolder(named, cwd), cwd, async (texts) => {
    const { openExamination } = await import('../examine/examine.ts');
    return openExamination(texts);
  });
  const { spots } = recall;
  const findings = await findAll(recall, spots);
  recall.save();
  if (options.editions && !options.json) stdout.write(await tablesOf(recall, spots));
  if (options.json) stdout.write(findingsJson(findings));
  else
    stdout.write(
      printFindings(findings, {
        ink: inkFor(terminal, options),
        projects: spots,
        summary: options.quiet !== true,
      }),
    );
  return isFailure(findings, options.strict === true) ? 1 : 0;
};

async function tablesOf(recall: Recall, spots: readonly Spot[]): Promise<string> {
  const { editionTables } = await import('./editions.ts');
  const studies = [];
  for (const spot of spots) studies.push(await recall.study(spot));
  return editionTables(studies);
}
