import type { Form } from '../form.ts';
import { sizeOfCard } from '../forming/box.ts';
import { form, optionalWord } from '../forming/form.ts';
import { mountain } from '../forming/layout.ts';

/** A card folded once, at its left or its upper edge. */
export const singleFoldCard: Form = form({
  name: 'single-fold card',
  summary: 'A card folded once, at its left or its upper edge.',
  size: sizeOfCard('width x height of the folded card'),
  parameters: {
    fold: optionalWord(['left', 'top'], 'the edge the fold lies at, left or top; left by default'),
  },
  panels: ['front', 'back'],
  example: {
    settings: ['size: 4 1/4 x 5 1/2'],
    layer: { panel: 'front', cut: '4 x 5 1/4' },
  },
  closing: 'Fold the back behind the front and burnish the fold.',
  mailed: 'card',
  measure: (settings, size) => ({ ...size, top: settings.choice('fold') === 'top' }),
  layout: ({ width, height, top }) => ({
    columns: top ? [width] : [width, width],
    rows: top ? [height, height] : [height],
    cells: top ? [['back'], ['front']] : [['back', 'front']],
    roles: { front: 'front' },
    bends: [mountain(1, ['back|front'], 180)],
  }),
});
