import type { Form } from '../form.ts';
import { refuseNarrowHalf } from '../forming/box.ts';
import { CARD_SIZE, readCard } from '../forming/card.ts';
import { form } from '../forming/form.ts';
import { layoutNet, mountain } from '../forming/layout.ts';

/**
 * A card whose front is two gates that meet in the middle. The sheet shows its outside, so the gate on its right is
 * the left one of the closed card.
 */
export const gateFoldCard: Form = form({
  name: 'gate-fold card',
  summary: 'A card whose front opens in the middle as two gates.',
  parameters: [CARD_SIZE],
  panels: ['left', 'right', 'back'],
  example: {
    settings: ['size: 4 1/4 x 5 1/2'],
    layer: { panel: 'left', cut: '1 7/8 x 5 1/4' },
  },
  closing: 'Fold both gates in until they meet and burnish the folds.',
  measure: (settings) => {
    const size = readCard(settings);
    const [width] = settings.lengths('size');
    if (!size || !width) return undefined;
    refuseNarrowHalf(settings, width, 'the width');
    return { ...size, gate: size.width.half() };
  },
  shape: ({ width, height, gate }, corners) => ({
    net: layoutNet({
      columns: [gate, width, gate],
      rows: [height],
      cells: [['right', 'back', 'left']],
      roles: { back: 'back' },
      bends: [mountain(1, ['right|back', 'back|left'], 180)],
      corners,
    }),
  }),
});
