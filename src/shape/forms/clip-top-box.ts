import type { Form } from '../form.ts';
import { readTab, sizeOfBox, TAB } from '../forming/box.ts';
import { form, optionalLength } from '../forming/form.ts';
import { mountain, valley } from '../forming/layout.ts';
import { customary } from '../forming/ruler.ts';

/**
 * A box whose front and back fold over to meet along the middle, half the depth each, and stand up there as two
 * flanges that a clip, a pin or a ribbon holds together. The flange's height is common practice, no source.
 */
export const clipTopBox: Form = form({
  name: 'clip-top box',
  summary: 'A slim box whose front and back fold over to meet and stand up as two flanges.',
  size: sizeOfBox(2),
  parameters: {
    tab: TAB,
    flange: optionalLength('height of the two flanges that stand up; 1/2 in (13 mm) by default'),
  },
  panels: ['front', 'back', 'left', 'right', 'front-flange', 'back-flange', 'front-top', 'back-top'],
  example: {
    settings: ['inside: 2 3/4 x 1 x 4', 'tab: 1/2'],
    layer: { panel: 'front', cut: '2 1/2 x 3 3/4' },
  },
  closing:
    'Fold the dust flaps in, fold the front and the back over them until they meet, and clip the two flanges together.',
  measure: (settings, { width, depth, height, at }) => {
    const why =
      'in a clip-top box deeper than it is wide, each side flap of the bottom is longer than the opening';
    settings.limit(depth, at.depth, 'the depth', { most: width, why }, settings.foldableInHalf);
    const tab = readTab(settings, depth, 'to the left side');
    const flange = settings.length('flange', customary(settings.ruler, 1, 2), [settings.foldable]);
    return { width, depth, height, tab, flange };
  },
  layout: ({ width, depth, height, tab, flange }) => ({
    columns: [depth, width, depth, width, tab],
    rows: [flange, depth.half(), height, depth],
    cells: [
      ['', 'front-flange', '', 'back-flange', ''],
      ['left-dust', 'front-top', 'right-dust', 'back-top', ''],
      ['left', 'front', 'right', 'back', 'tab'],
      ['left-bottom', 'front-bottom', 'right-bottom', 'back-bottom', ''],
    ],
    roles: { front: 'front' },
    bends: [
      mountain(1, ['left|front', 'front|right', 'right|back', 'back|tab']),
      mountain(2, ['left|left-bottom', 'right|right-bottom']),
      mountain(3, ['back|back-bottom']),
      mountain(4, ['front|front-bottom']),
      mountain(5, ['left|left-dust', 'right|right-dust']),
      mountain(6, ['front|front-top', 'back|back-top']),
      valley(6, ['front-top|front-flange', 'back-top|back-flange']),
    ],
    taper: ['left-dust', 'right-dust', 'left-bottom', 'right-bottom', 'tab'],
    glue: [
      ['tab', 'left'],
      ['left-bottom', 'back-bottom'],
      ['right-bottom', 'back-bottom'],
      ['front-bottom', 'back-bottom'],
    ],
  }),
});
