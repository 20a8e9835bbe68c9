import type { Form } from '../form.ts';
import { CARD_SIZE, readCard } from '../forming/card.ts';
import { form } from '../forming/form.ts';
import { layoutNet, mountain } from '../forming/layout.ts';

/** A card folded once, at its left or its upper edge. */
export const singleFoldCard: Form = form({
  name: 'single-fold card',
  summary: 'A card folded once, at its left or its upper edge.',
  parameters: [
    CARD_SIZE,
    {
      key: 'fold',
      kind: 'choice',
      choices: ['left', 'top'],
      required: false,
      says: 'the edge the fold lies at, left or top; left when not given',
    },
  ],
  panels: ['front', 'back'],
  example: {
    settings: ['size: 4 1/4 x 5 1/2'],
    layer: { panel: 'front', cut: '4 x 5 1/4' },
  },
  closing: 'Fold the back behind the front and burnish the fold.',
  measure: (settings) => {
    const size = readCard(settings);
    return size && { ...size, top: settings.choice('fold') === 'top' };
  },
  shape: ({ width, height, top }, corners) => ({
    net: layoutNet({
      columns: top ? [width] : [width, width],
      rows: top ? [height, height] : [height],
      cells: top ? [['back'], ['front']] : [['back', 'front']],
      roles: { front: 'front' },
      bends: [mountain(1, ['back|front'], 180)],
      corners,
    }),
  }),
});
