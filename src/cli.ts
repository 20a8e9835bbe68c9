import { Command, CommanderError } from 'commander';
import { addDraft } from './cli/draft.ts';
import { addKit } from './cli/kit.ts';
import { addMake } from './cli/make.ts';
import { addPreview } from './cli/preview.ts';
import { addProof } from './cli/proof.ts';
import { addPublish } from './cli/publish.ts';
import { type CommandHost, type ExitCode, Refusal, type Terminal } from './cli/terminal.ts';
import { packageVersion } from './make/package-root.ts';

const COMMANDS: readonly ((host: CommandHost) => void)[] = [
  addProof,
  addMake,
  addKit,
  addPreview,
  addPublish,
  addDraft,
];

/** Runs one command line and gives its exit code. Never throws for what a person typed or wrote. */
export async function run(terminal: Terminal): Promise<ExitCode> {
  let code: ExitCode = 0;
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
  const done = (result: ExitCode): void => {
    code = result;
  };
  for (const add of COMMANDS) add({ program, terminal, done });
  try {
    await program.parseAsync([...terminal.argv], { from: 'user' });
  } catch (error) {
    return failure(error, terminal);
  }
  return code;
}

function failure(error: unknown, terminal: Terminal): ExitCode {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  if (error instanceof Refusal || isRemedied(error)) {
    terminal.stderr.write(`sheetwright: ${error.message}\n`);
    return 2;
  }
  const told = error instanceof Error ? (error.stack ?? error.message) : String(error);
  terminal.stderr.write(
    `sheetwright: this is a mistake of ours, not of your project; please report it\n${told}\n`,
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
