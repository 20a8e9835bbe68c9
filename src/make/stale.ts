import { join } from 'node:path';
import type { Inputs } from '../recall/inputs.ts';
import type { Stamps } from '../recall/stamps.ts';
import type { MadeRecord } from './records.ts';

/** Why each kind of output is to be made again: the inputs that are another, the files that are. */
export type Stale = ReadonlyMap<string, readonly string[]>;

/**
 * What of a record no longer holds: outputs of which an input is another, or whose files somebody changed or removed.
 * @param folder The project's folder; empty for the site.
 */
export function findStale(
  record: MadeRecord,
  folder: string,
  { inputs, stamps }: { readonly inputs: Inputs; readonly stamps: Stamps },
  out: string,
): Stale {
  // A browser that cannot be found now is none to print anything again for.
  const isKnown = (name: string): boolean => name !== 'browser' || inputs.digest('', name) !== '';
  const changed = new Set(inputs.changed(folder, record.inputs).filter(isKnown));
  const stale = new Map<string, readonly string[]>();
  for (const [name, { uses, files, isDue }] of Object.entries(record.outputs)) {
    const others = uses.filter((input) => changed.has(input));
    const touched = Object.entries(files).flatMap(([path, { sha256 }]) =>
      stamps.digestOf(join(out, path)) === sha256 ? [] : [path],
    );
    const why = [...others, ...touched, ...(isDue ? ['due'] : [])];
    if (why.length > 0) stale.set(name, why);
  }
  return stale;
}
