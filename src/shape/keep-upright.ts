import type { Stock } from '../project/stock.ts';

/** Why pieces may not be turned on the sheets of a stock; undefined where they may. */
type Uprightness = 'print' | 'grain' | undefined;

/** A print that has a right way up, or a grain that is given, keeps every piece as it is drawn. */
export function keptUpright({ print, grain }: Stock): Uprightness {
  if (print?.value === 'upright') return 'print';
  return grain && 'grain';
}
