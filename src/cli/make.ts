import { make } from '../make/make.ts';
import { isFailure } from '../proof/told.ts';
import { type MakingOptions, makeOptionsOf, tellMade, withMakingOptions } from './making.ts';
import type { CommandHost } from './terminal.ts';

/** `sheetwright make [workspace]` */
export function addMake({ program, terminal, done }: CommandHost): void {
  const command = program
    .command('make')
    .description('proof every project, then make whatever changed: page, handouts, template, index');
  withMakingOptions(command).action(async (named: string | undefined, options: MakingOptions) => {
    const result = await make(makeOptionsOf(named, options, terminal));
    tellMade(result, options, terminal);
    done(isFailure(result.findings, options.strict === true) ? 1 : 0);
  });
}
