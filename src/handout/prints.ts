import type { Paper } from '../project/model.ts';

/** What a sheet is printed as. */
export type Print = Paper | 'large-print';

/** A PDF that is offered; the template without a paper is the only one there is. */
export type Download = {
  readonly kind: Print | 'template' | `template-${Paper}`;
  readonly href: string;
};
