import { relative, resolve } from 'node:path';
import { Presets, SingleBar } from 'cli-progress';
import { type MakeOptions, type MakeProgress, type MakeResult, make } from '../make/make.ts';
import { printFindings } from '../proof/print.ts';
import { isFailure } from '../proof/told.ts';
import {
  type CommandRun,
  type CommonOptions,
  count,
  type ExitCode,
  inkFor,
  type Terminal,
} from './terminal.ts';
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

/** `sheetwright make [workspace]` */
export const run: CommandRun<MakingOptions> = async ([named], options, terminal) =>
  tellMade(await make(makeOptionsOf(named, options, terminal)), options, terminal);

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
export function tellMade(result: MakeResult, options: MakingOptions, terminal: Terminal): ExitCode {
  const { findings, studies, made, held, written } = result;
  const { stdout, cwd } = terminal;
  const quiet = options.quiet === true;
  const ink = inkFor(terminal, options);
  const projects = studies.map(({ project }) => project);
  stdout.write(printFindings(findings, { ink, projects, summary: !quiet }));
  const code = isFailure(findings, options.strict === true) ? 1 : 0;
  if (quiet) return code;
  const touched = written.filter(({ how }) => how !== 'kept').length;
  const folder = relative(cwd, resolve(cwd, options.out)) || '.';
  const files = count(touched, 'file');
  stdout.write(`${count(made.length, 'project')} made, ${files} new or changed, in ${folder}/\n`);
  if (held.length > 0) stdout.write(`kept as they were because of what was found: ${held.join(', ')}\n`);
  return code;
}

/** Today where the demonstrator is, `YYYY-MM-DD`. */
export function today(): string {
  const now = new Date();
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** A bar on a terminal, a plain line per file elsewhere, nothing when quiet. */
function progressOn(terminal: Terminal, options: CommonOptions): MakeProgress | undefined {
  if (options.quiet) return undefined;
  return terminal.stderr.isTTY === true ? barOn(terminal) : linesOn(terminal);
}

function linesOn({ stderr }: Terminal): MakeProgress {
  return {
    begin: () => {},
    working: (path) => void stderr.write(`making ${path}\n`),
    passed: () => {},
    end: () => {},
  };
}

function barOn({ stderr }: Terminal): MakeProgress {
  const bar = new SingleBar(
    { stream: stderr, format: '{bar} {value}/{total}  {path}', hideCursor: true, clearOnComplete: true },
    Presets.shades_classic,
  );
  let running = false;
  return {
    begin: (projects) => {
      bar.start(projects, 0, { path: '' });
      running = true;
    },
    working: (path) => bar.update({ path }),
    passed: () => bar.increment(),
    end: () => {
      if (running) bar.stop();
      running = false;
    },
  };
}
