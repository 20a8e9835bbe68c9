import { setImmediate } from 'node:timers/promises';
import { Command, CommanderError } from 'commander';
import { type CommandRun, type ExitCode, Refusal, type Terminal } from './cli/terminal.ts';
import { packageVersion } from './recall/package-root.ts';
import { forms } from './shape/forms/index.ts';

type Option = readonly [flags: string, says: string, usual?: string];

type CommandEntry = {
  readonly name: string;
  readonly says: string;
  /** What comes first, where something is named: the project's slug, if nothing else is said. */
  readonly slug?: string;
  readonly first?: string;
  readonly required?: Option;
  readonly options: readonly Option[];
  /** What a command needs is loaded once it is given. */
  readonly load: () => Promise<{ readonly run: CommandRun<never> }>;
};

const OUT: Option = ['--out <folder>', 'where to put what is made', 'dist'];
const BROWSER: Option = ['--browser <program>', 'the browser that prints the PDFs'];
const STRICT: Option = ['--strict', 'count warnings as errors'];
const COLOR: Option = ['--no-color', 'print without color'];
const MAKING: readonly Option[] = [
  OUT,
  ['--only <slug...>', 'only these projects'],
  ['--all', 'make everything again, changed or not'],
  ['--why', 'print why each file was made, even if it came out the same'],
  ['--no-pdf', 'skip the PDFs, for speed'],
  ['--shard <part>', 'only a part of the projects, such as 2/5, and none of the site’s own pages'],
  STRICT,
  BROWSER,
  [
    '--browser-endpoint <address...>',
    'browsers that run elsewhere, such as ws://host:9222/devtools/browser/…',
  ],
  ['--quiet', 'print findings only'],
  COLOR,
];

const COMMANDS: readonly CommandEntry[] = [
  {
    name: 'proof',
    says: 'check every project and print what was found',
    options: [
      ['--json', 'print one JSON array of findings and nothing else'],
      STRICT,
      ['--editions', 'print what each length becomes in the other edition'],
      ['--quiet', 'print findings only, no summary'],
      COLOR,
    ],
    load: () => import('./cli/proof.ts'),
  },
  {
    name: 'make',
    says: 'proof every project, then make whatever changed: page, handouts, template, index',
    options: MAKING,
    load: () => import('./cli/make.ts'),
  },
  {
    name: 'kit',
    says: 'plan a class: fewest sheets and how to cut them, shopping list, cost',
    slug: 'the project',
    options: [
      ['--attendees <number>', 'how many people come'],
      ['--roster <file>', 'who comes, as a table (CSV): bags with names, a packing list, address labels'],
      ['--variant <name...>', 'of a project with variants: small for everybody, small=6 large=6, or all'],
      ['--spares <number>', 'extra kits, of each variant', '0'],
      ['--work <number>', 'how far to look for a better plan', '5'],
      ['--margin <percent>', 'profit margin, as a percentage of the price'],
      ['--kerf <length>', 'paper lost to the blade in each cut'],
      ['--trim-margin <length>', 'what is trimmed off all four edges of each sheet first'],
      ['--labels', 'print labels for the bags too'],
      ['--json', 'print the kit as JSON and nothing else'],
      ['--csv', 'print the kit as CSV and nothing else'],
      OUT,
      BROWSER,
      ['--quiet', 'print findings only'],
      COLOR,
    ],
    load: () => import('./cli/kit.ts'),
  },
  {
    name: 'season',
    says: 'plan all the sessions of a period together: cutting, shopping, cost, and what to do by when',
    options: [
      ['--from <day>', 'the first day, such as 2026-10-15 (default: today)'],
      ['--to <day>', 'the last day (default: that of the last session)'],
      ['--attendees <number>', 'how many come to each session (default: the people of the schedule)'],
      ['--session <slug=number...>', 'how many come to one of them, such as bulb-box=14; 0 leaves it out'],
      [
        '--variant <slug=name...>',
        'which variant one of them makes, such as bulb-box=large (default: the first)',
      ],
      ['--spares <number>', 'extra kits, for each session', '0'],
      ['--work <number>', 'how far to look for a better plan', '20'],
      ['--kerf <length>', 'paper lost to the blade in each cut'],
      ['--trim-margin <length>', 'what is trimmed off all four edges of each sheet first'],
      ['--json', 'print the season as JSON and nothing else'],
      ['--csv', 'print the season as CSV and nothing else'],
      OUT,
      BROWSER,
      ['--quiet', 'print findings only'],
      COLOR,
    ],
    load: () => import('./cli/season.ts'),
  },
  {
    name: 'copies',
    says: 'put copies of a handout into one PDF for the copy shop',
    slug: 'the project, which "make" has made',
    required: ['--count <number>', 'how many copies'],
    options: [
      ['--print <name>', 'which handout: letter, a4 or large-print (default: the first there is)'],
      ['--layout <name>', 'single, two-up on a sheet twice as large, or booklet', 'single'],
      OUT,
      ['--quiet', 'print nothing'],
      COLOR,
    ],
    load: () => import('./cli/copies.ts'),
  },
  {
    name: 'uses',
    says: 'print which projects use a stock, a supply, a shared box, a set or a tag, and how much of it',
    slug: 'what is used, such as shared.moss',
    first: 'name',
    options: [
      ['--json', 'print one JSON array and nothing else'],
      ['--quiet', 'print no more than is asked for'],
      COLOR,
    ],
    load: () => import('./cli/uses.ts'),
  },
  {
    name: 'preview',
    says: 'serve the site on this machine, follow every save, and refresh the page',
    options: [
      ['--port <number>', 'the port to serve on; the next free one if it is taken', '4300'],
      ['--host', 'let your phone look too: serve to your own network, each device with a key of its own'],
      ['--out <folder>', 'where to put what is made', 'dist/preview'],
      BROWSER,
      ['--quiet', 'print the address and findings only'],
      COLOR,
    ],
    load: () => import('./cli/preview.ts'),
  },
  {
    name: 'publish',
    says: 'make, and record a new revision of each project whose measurements or steps changed',
    options: [...MAKING, ['--dry-run', 'print what would be recorded, make and record nothing']],
    load: () => import('./cli/publish.ts'),
  },
  {
    name: 'draft',
    says: 'write a new commented project that already proofs clean',
    slug: 'the name of its folder, such as seed-packet-keeper',
    options: [
      ['--form <name>', `start from a ready-made form: ${forms.map(({ name }) => name).join(', ')}`],
      ['--from <slug>', 'start from another project, resized to hold something else'],
      ['--holds <size>', 'with --from: the size of one item that goes in, such as "4 x 5 x 1/8"'],
      ['--count <number>', 'with --from: how many go in; by default as many as before'],
      ['--variant <name>', 'with --from: the only variant to keep'],
      ['--name <title>', 'with --from: the title of the new project'],
      ['--quiet', 'print nothing'],
      COLOR,
    ],
    load: () => import('./cli/draft.ts'),
  },
];

/** Runs one command line and gives its exit code. Never throws for what a person typed or wrote. */
export async function run(terminal: Terminal): Promise<ExitCode> {
  let code: ExitCode = 0;
  let unprinted: Error | undefined;
  for (const stream of [terminal.stdout, terminal.stderr]) {
    stream.on('error', (error) => {
      if (!isUnread(error)) unprinted ??= error;
    });
  }
  const program = new Command('sheetwright')
    .description('Turns one Markdown file per papercraft project into a proofed, printable project sheet.')
    .version(packageVersion(), '--version', 'print the version')
    .helpOption('--help', 'print this help')
    .exitOverride()
    .showHelpAfterError('(--help shows what there is)')
    .configureOutput({
      writeOut: (text) => terminal.stdout.write(text),
      writeErr: (text) => terminal.stderr.write(text),
      getOutHelpWidth: () => 100,
      getErrHelpWidth: () => 100,
    });
  for (const entry of COMMANDS) {
    const command = addCommand(program, entry);
    command.action(async () => {
      const { run: carryOut } = await entry.load();
      code = await carryOut(command.args, command.opts() as never, terminal);
    });
  }
  const [help, topic] = terminal.argv;
  const known = [...COMMANDS.map(({ name }) => name), 'help'];
  // Commander answers such a question with the help for everything. Asked for the command itself, it says there is none.
  const isAstray = help === 'help' && topic !== undefined && !topic.startsWith('-') && !known.includes(topic);
  try {
    await program.parseAsync(isAstray ? [topic] : [...terminal.argv], { from: 'user' });
  } catch (error) {
    return failure(error, terminal);
  }
  // What was printed last fails, if it does, before anything else has its turn.
  await setImmediate();
  if (!unprinted) return code;
  const why = `what was to be printed could not be written (${unprinted.message}); make room for it, or send it elsewhere`;
  return failure(new Refusal(why), terminal);
}

/** Whoever reads what is printed may have read enough, as `head` does: the rest is for nobody. */
function isUnread(error: Error): boolean {
  return 'code' in error && error.code === 'EPIPE';
}

function addCommand(
  program: Command,
  { name, says, slug, first = 'slug', required, options }: CommandEntry,
): Command {
  const command = program.command(name).description(says);
  if (slug !== undefined) command.argument(`<${first}>`, slug);
  command.argument('[workspace]', 'the folder of projects (default: here, else projects/)');
  if (required) command.requiredOption(...required);
  for (const option of options) command.option(...option);
  return command;
}

function failure(error: unknown, terminal: Terminal): ExitCode {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  if (error instanceof Refusal || isRemedied(error)) {
    terminal.stderr.write(`sheetwright: ${error.message}\n`);
    return 2;
  }
  const told = error instanceof Error ? (error.stack ?? error.message) : String(error);
  terminal.stderr.write(
    `sheetwright: this is a bug in Sheetwright, not a mistake in your project; please report it\n${told}\n`,
  );
  return 2;
}

/** Errors of what was asked for, or of the environment, already say in one line what to do. */
function isRemedied(error: unknown): error is Error {
  return (
    error instanceof Error &&
    ['NoSuchProject', 'Unwritable', 'BrowserMissing', 'PrintFault'].includes(error.name)
  );
}
