import type { Paper } from '../project/model.ts';

/** What a sheet is printed as. */
export type Print = Paper | 'large-print';

/** A file that the page of a project leads to. */
export type Download = {
  /** The key of its label. */
  readonly label: string;
  /** Relative to the page. */
  readonly href: string;
  /** Of a PDF, which lists name too: the keys of the line it stands on, and of its paper there. */
  readonly listed?: { readonly line: string; readonly paper: string };
};
