import { relative, resolve } from 'node:path';
import type { Command } from 'commander';
import type { MakeOptions, MakeResult } from '../make/make.ts';
import { printFindings } from '../proof/print.ts';
import { progressOn } from './progress.ts';
import { type CommonOptions, inkFor, type Terminal } from './terminal.ts';
import { workspaceFolder } from './workspace-folder.ts';

/** What `make` and the commands that make as well take. */
export type MakingOptions = CommonOptions & {
  readonly out: string;
  readonly only?: readonly string[];
  readonly all?: boolean;
  readonly pdf: boolean;
  readonly strict?: boolean;
  readonly browser?: string;
};

/** Adds the workspace argument and the options of making to a command. */
export function withMakingOptions(command: Command): Command {
  return command
    .argument('[workspace]', 'the folder of projects (default: here, else projects/)')
    .option('--out <folder>', 'where to put what is made', 'dist')
    .option('--only <slug...>', 'only these projects')
    .option('--all', 'make everything again, changed or not')
    .option('--no-pdf', 'leave the PDFs out, for speed')
    .option('--strict', 'count warnings as errors')
    .option('--browser <program>', 'the browser that prints the PDFs')
    .option('--quiet', 'print findings only')
    .option('--no-color', 'print without color');
}

/** What was typed, as `make` takes it. @throws Refusal when there is no workspace. */
export function makeOptionsOf(
  named: string | undefined,
  options: MakingOptions,
  terminal: Terminal,
): MakeOptions {
  return {
    ...options,
    root: workspaceFolder(named, terminal.cwd),
    out: resolve(terminal.cwd, options.out),
    namedFrom: terminal.cwd,
    today: today(),
    progress: progressOn(terminal, options),
  };
}

/** Prints what was found and, unless quiet, what was made. */
export function tellMade(result: MakeResult, options: MakingOptions, terminal: Terminal): void {
  const { findings, studies, made, held, written } = result;
  const { stdout, cwd } = terminal;
  const quiet = options.quiet === true;
  const ink = inkFor(terminal, options);
  const projects = studies.map(({ project }) => project);
  stdout.write(printFindings(findings, { ink, projects, summary: !quiet }));
  if (quiet) return;
  const touched = written.filter(({ how }) => how !== 'kept').length;
  const folder = relative(cwd, resolve(cwd, options.out)) || '.';
  const files = count(touched, 'file');
  stdout.write(`${count(made.length, 'project')} made, ${files} new or changed, in ${folder}/\n`);
  if (held.length > 0) stdout.write(`kept as they were because of what was found: ${held.join(', ')}\n`);
}

export function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? '' : 's'}`;
}

/** Today where the demonstrator is, `YYYY-MM-DD`. */
export function today(): string {
  const now = new Date();
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
