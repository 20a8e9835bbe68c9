import type { Form } from '../form.ts';
import { sizeOfCard } from '../forming/box.ts';
import { form } from '../forming/form.ts';
import { mountain } from '../forming/layout.ts';

/**
 * A card whose front is two gates that meet in the middle. The sheet shows its outside, so the gate on its right is
 * the left one of the closed card.
 */
export const gateFoldCard: Form = form({
  name: 'gate-fold card',
  summary: 'A card whose front opens in the middle as two gates.',
  size: sizeOfCard('width x height of the folded card'),
  panels: ['left', 'right', 'back'],
  example: {
    settings: ['size: 4 1/4 x 5 1/2'],
    layer: { panel: 'left', cut: '1 7/8 x 5 1/4' },
  },
  closing: 'Fold both gates in until they meet and burnish the folds.',
  mailed: 'card',
  measure: (settings, { width, height, at }) => {
    settings.limit(width, at.width, 'the width', settings.foldableInHalf);
    return { width, height, gate: width.half() };
  },
  layout: ({ width, height, gate }) => ({
    columns: [gate, width, gate],
    rows: [height],
    cells: [['right', 'back', 'left']],
    roles: { back: 'back' },
    bends: [mountain(1, ['right|back', 'back|left'], 180)],
  }),
});
