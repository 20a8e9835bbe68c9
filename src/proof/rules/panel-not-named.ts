import { writeRef } from '../../project/ref.ts';
import { fittingPanel, groundOf, liesOnWhole, panelUnder } from '../../shape/ground.ts';
import { eachOnBase, type OfLayer } from '../axis.ts';
import type { Rule } from '../rule.ts';

type Facts = OfLayer & {
  /** The panel on which it comes to lie, as it is to be written, and one that it would fit on besides. */
  readonly panel: string;
  readonly named: string;
  readonly fitting?: string;
};

export const panelNotNamed: Rule<Facts> = {
  severity: 'warning',
  summary: 'A layer on a folded piece says which panel it goes on.',
  why: 'Without a panel, `on: card` is the whole sheet as it lies flat, and its middle may be the back. Distances and borders are then measured on the whole sheet, and drawings of the folded card leave the layer out.',
  fails: {
    pieces:
      'card: { stock: cream, form: gate-fold card, size: 5 1/2 x 4 1/4 }\nmat: { stock: cream, cut: 2 1/2 x 4, on: card }',
    blames: 'card',
  },
  passes: { with: 'on: card.left', insteadOf: 'on: card' },
  check: (context) =>
    eachOnBase(context, (layer) => {
      const { shapes } = context;
      const panel = liesOnWhole(layer, shapes) ? panelUnder(groundOf(layer, shapes))?.id : undefined;
      const fitting = fittingPanel(layer);
      if (panel === undefined) return undefined;
      const nameOf = (part: string): string => writeRef({ ...layer.on, part });
      const isOther = fitting !== undefined && fitting !== panel;
      return { panel, named: nameOf(panel), ...(isOther && { fitting: nameOf(fitting) }) };
    }),
  say: ({ layer, baseName, panel, named, fitting }) => ({
    message: `${layer} lies on ${baseName} as a whole, and so on its ${panel}: no panel is named`,
    remedy: `write "on: ${named}"${fitting ? `, or another panel, such as "on: ${fitting}"` : ''}`,
  }),
};
