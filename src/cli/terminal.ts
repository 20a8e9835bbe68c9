import type { Readable, Writable } from 'node:stream';
import { styleText } from 'node:util';

/** Where a command runs: handed in, so that tests run commands as functions. */
export type Terminal = {
  readonly argv: readonly string[];
  readonly cwd: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly stdin: Readable;
  readonly stdout: Writable & { readonly isTTY?: boolean };
  readonly stderr: Writable & { readonly isTTY?: boolean };
  /** Ends a command that runs until it is ended, as Ctrl-C does. */
  readonly ends?: AbortSignal;
};

/** 0 fine; 1 findings of severity error; 2 wrong usage or a broken environment. */
export type ExitCode = 0 | 1 | 2;

/** What carries a command out: what was typed of its arguments and options, and where it runs. */
export type CommandRun<Options> = (
  typed: readonly (string | undefined)[],
  options: Options,
  terminal: Terminal,
) => Promise<ExitCode>;

/** Wrong usage or a broken environment, with one line that says what to do. */
export class Refusal extends Error {
  override readonly name = 'Refusal';
}

/** The options every command has. */
export type CommonOptions = { readonly quiet?: boolean; readonly color?: boolean };

type Ink = 'red' | 'yellow' | 'cyan' | 'gray' | 'bold' | 'green';

/** Paints text, or leaves it plain: NO_COLOR (no-color.org), `--no-color`, or no terminal. */
export function inkFor(terminal: Terminal, options: CommonOptions): (ink: Ink, text: string) => string {
  const plain = options.color === false || !!terminal.env.NO_COLOR || terminal.stdout.isTTY !== true;
  return plain ? (_, text) => text : (ink, text) => styleText(ink, text, { validateStream: false });
}
