import { existsSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { make } from '../make/make.ts';
import type { MakeOptions, MakeProgress, MakeResult, WrittenFor } from '../make/make-options.ts';
import { printFindings } from '../proof/print.ts';
import { isFailure } from '../proof/told.ts';
import { sayCount } from '../proof/words.ts';
import {
  type CommandRun,
  type CommonOptions,
  type ExitCode,
  inkFor,
  Refusal,
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
  readonly why?: boolean;
  readonly shard?: string;
  readonly browserEndpoint?: readonly string[];
};

/** `sheetwright make [workspace]` */
export const run: CommandRun<MakingOptions> = async ([named], options, terminal) =>
  tellMade(await make(await makeOptionsOf(named, options, terminal)), options, terminal);

/** What was typed, as `make` takes it. @throws Refusal when there is no workspace. */
export async function makeOptionsOf(
  named: string | undefined,
  options: MakingOptions,
  terminal: Terminal,
): Promise<MakeOptions> {
  return {
    ...options,
    shard: shardOf(options.shard),
    endpoints: options.browserEndpoint,
    root: workspaceFolder(named, terminal.cwd),
    out: resolve(terminal.cwd, options.out),
    namedFrom: terminal.cwd,
    today: today(),
    progress: await progressOn(terminal, options),
  };
}

/** Prints what was found and, unless quiet, what was made. */
export function tellMade(result: MakeResult, options: MakingOptions, terminal: Terminal): ExitCode {
  const { findings, spots, made, held, written, vanished } = result;
  const { stdout, cwd } = terminal;
  const quiet = options.quiet === true;
  const ink = inkFor(terminal, options);
  stdout.write(printFindings(findings, { ink, projects: spots, summary: !quiet }));
  const code = isFailure(findings, options.strict === true) ? 1 : 0;
  if (quiet) return code;
  if (options.why) stdout.write(written.map(tellWhy).join(''));
  const touched = written.filter(({ how }) => how !== 'kept').length;
  const folder = relative(cwd, resolve(cwd, options.out)) || '.';
  const files = sayCount(touched, 'file');
  stdout.write(`${sayCount(made.length, 'project')} up to date, ${files} new or changed, in ${folder}/\n`);
  const front = join(folder, 'site/index.html');
  if (touched > 0 && existsSync(resolve(cwd, front))) stdout.write(`open ${front} to see them\n`);
  for (const slug of vanished) {
    stdout.write(`${slug}/ is no longer there; if it has a new name, write was: [${slug}] into its sheet\n`);
  }
  if (held.length > 0) stdout.write(`not updated because of errors: ${held.join(', ')}\n`);
  return code;
}

/** `2/5`, the second of five parts. */
function shardOf(text: string | undefined): MakeOptions['shard'] {
  if (text === undefined) return undefined;
  const [, part, of] = (/^(\d{1,4})\/(\d{1,4})$/u.exec(text) ?? []).map(Number);
  if (part && of && part <= of) return { part, of };
  throw new Refusal(`--shard takes which part of how many, such as 2/5, not "${text}"`);
}

/** `site/box/box.ics changed: sheet.md`, or that it came out as it was. */
function tellWhy({ path, how, why }: WrittenFor): string {
  const causes = why.map((input) => WORDS[input] ?? input).join(', ');
  const said = how === 'kept' ? 'is as it was' : how;
  return `${path} ${said}: ${causes === '' ? 'it is a new kind of output' : causes}\n`;
}

/** What inputs are called for who does not know the program from inside. */
const WORDS: Readonly<Partial<Record<string, string>>> = {
  new: 'it was not made before',
  'asked for': '--all',
  due: 'it waited for the page of what was saved',
  sheet: 'sheet.md',
  ledger: 'revisions.yaml',
  site: 'site.yaml',
  shared: 'a file of shared/',
  program: 'the program',
  browser: 'the browser',
  pdf: 'whether PDFs are made',
  offered: 'whether there are PDFs',
  cards: 'what the list says of a project',
  records: 'what was made',
  today: 'the day',
};

/** Today where the demonstrator is, `YYYY-MM-DD`. */
export function today(): string {
  const now = new Date();
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** A bar on a terminal, elsewhere a plain line for each file that is new or changed; nothing when quiet. */
async function progressOn(terminal: Terminal, options: CommonOptions): Promise<MakeProgress | undefined> {
  if (options.quiet) return undefined;
  return terminal.stderr.isTTY === true ? barOn(terminal) : linesOn(terminal);
}

function linesOn({ stderr }: Terminal): MakeProgress {
  return {
    begin: () => {},
    working: () => {},
    wrote: ({ path, how }) => {
      if (how !== 'kept') stderr.write(`made ${path}\n`);
    },
    passed: () => {},
    end: () => {},
  };
}

async function barOn({ stderr }: Terminal): Promise<MakeProgress> {
  const { Presets, SingleBar } = await import('cli-progress');
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
    wrote: () => {},
    passed: () => bar.increment(),
    end: () => {
      if (running) bar.stop();
      running = false;
    },
  };
}
