import { relative, resolve } from 'node:path';
import { type MakeResult, make } from '../make/make.ts';
import { printFindings } from '../proof/print.ts';
import { isFailure } from './findings.ts';
import { progressOn } from './progress.ts';
import { type CommandHost, type CommonOptions, inkFor, Refusal, type Terminal } from './terminal.ts';
import { workspaceFolder } from './workspace-folder.ts';

/** What `make` and the commands that build on it take. */
export type MakingOptions = CommonOptions & {
  readonly out: string;
  readonly only?: readonly string[];
  readonly all?: boolean;
  readonly pdf: boolean;
  readonly strict?: boolean;
  readonly browser?: string;
};

/** `sheetwright make [workspace]` */
export function addMake({ program, terminal, done }: CommandHost): void {
  program
    .command('make')
    .description('proof every project, then make whatever changed: page, handouts, template, index')
    .argument('[workspace]', 'the folder of projects (default: here, else projects/)')
    .option('--out <folder>', 'where to put what is made', 'dist')
    .option('--only <slug...>', 'only these projects')
    .option('--all', 'make everything again, changed or not')
    .option('--no-pdf', 'leave the PDFs out, for speed')
    .option('--strict', 'count warnings as errors')
    .option('--browser <program>', 'the browser that prints the PDFs')
    .option('--quiet', 'print findings only')
    .option('--no-color', 'print without color')
    .action(async (named: string | undefined, options: MakingOptions) => {
      const root = workspaceFolder(named, terminal.cwd);
      const result = await make({
        ...options,
        root,
        out: resolve(terminal.cwd, options.out),
        namedFrom: terminal.cwd,
        today: today(),
        progress: progressOn(terminal, options),
      });
      requireThere(options.only, result);
      terminal.stdout.write(
        printFindings(result.findings, {
          ink: inkFor(terminal, options),
          projects: result.workspace.projects,
          summary: options.quiet !== true,
        }),
      );
      if (!options.quiet) terminal.stdout.write(summary(result, options, terminal));
      done(isFailure(result.findings, options.strict === true) ? 1 : 0);
    });
}

function requireThere(only: readonly string[] | undefined, { workspace }: MakeResult): void {
  const there = workspace.projects.map(({ slug }) => slug);
  const missing = only?.find((slug) => !there.includes(slug));
  if (missing !== undefined) {
    throw new Refusal(`no project "${missing}" here: there are ${there.join(', ') || 'none'}`);
  }
}

function summary({ made, held, written }: MakeResult, options: MakingOptions, { cwd }: Terminal): string {
  const touched = written.filter(({ how }) => how !== 'kept').length;
  const lines = [
    `${count(made.length, 'project')} made, ${count(touched, 'file')} new or changed, in ${relative(cwd, resolve(cwd, options.out)) || '.'}/`,
  ];
  if (held.length > 0) lines.push(`kept as they were because of what was found: ${held.join(', ')}`);
  return `${lines.join('\n')}\n`;
}

/** Today where the demonstrator is. */
function today(): string {
  const now = new Date();
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? '' : 's'}`;
}
