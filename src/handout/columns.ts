import type { Setting } from './setting.ts';

/** The two columns of a list of measurements: the leading edition's and the other's. */
export type EditionColumns = { readonly lead: EditionColumn; readonly second: EditionColumn };
/** `unit` is as in `data-unit`. */
export type EditionColumn = { readonly heading: string; readonly unit: 'in' | 'mm' };

export function editionColumns({ measures, voice }: Setting): EditionColumns {
  const inch: EditionColumn = { heading: voice.say('cut-inch'), unit: 'in' };
  const metric: EditionColumn = { heading: voice.say('cut-metric'), unit: 'mm' };
  return measures.leading === 'inch' ? { lead: inch, second: metric } : { lead: metric, second: inch };
}
