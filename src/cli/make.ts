import { make } from '../make/make.ts';
import { type MakingOptions, makeOptionsOf, tellMade } from './making.ts';
import type { ExitCode, Terminal } from './terminal.ts';

/** `sheetwright make [workspace]` */
export async function run(
  [named]: readonly (string | undefined)[],
  options: MakingOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const result = await make(makeOptionsOf(named, options, terminal));
  return tellMade(result, options, terminal);
}
