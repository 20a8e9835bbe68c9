import type { Form } from '../form.ts';
import {
  BOX_PARAMETERS,
  BOX_SIZES,
  readBox,
  refuseNarrow,
  refuseNarrowHalf,
  sizesOf,
  TAB_PARAMETER,
  usualTab,
} from '../forming/box.ts';
import { form } from '../forming/form.ts';
import { layoutNet, mountain, valley } from '../forming/layout.ts';
import { customary } from '../forming/ruler.ts';

/**
 * A box whose front and back fold over to meet along the middle, half the depth each, and stand up there as two
 * flanges that a clip, a pin or a ribbon holds together. The flange's height is common practice, no source.
 */
export const clipTopBox: Form = form({
  name: 'clip-top box',
  summary: 'A slim box whose front and back fold over to meet and stand up as two flanges.',
  parameters: [
    ...BOX_PARAMETERS,
    TAB_PARAMETER,
    {
      key: 'flange',
      kind: 'length',
      required: false,
      says: 'height of the two flanges that stand up; 1/2 in (13 mm) when not given',
    },
  ],
  oneOf: BOX_SIZES,
  panels: ['front', 'back', 'left', 'right', 'front-flange', 'back-flange', 'front-top', 'back-top'],
  example: {
    settings: ['inside: 3 1/2 x 1 x 4 3/4', 'tab: 1/2'],
    layer: { panel: 'front', cut: '3 1/4 x 4 1/2' },
  },
  closing:
    'Fold the dust flaps in, fold the front and the back over them until they meet, and clip the two flanges together.',
  measure: (settings) => {
    const box = readBox(settings, 2);
    if (!box) return undefined;
    const tab = settings.length('tab', usualTab(settings, box.depth.value));
    const flange = settings.length('flange', customary(settings.ruler, 1, 2));
    settings.refuseOver(
      box.depth,
      box.width.value,
      'the depth',
      'in a clip-top box deeper than it is wide, each side flap of the bottom is longer than the opening',
    );
    settings.refuseOver(
      tab,
      box.depth.value,
      'the tab',
      'it is glued to the left side, which is only that wide',
    );
    refuseNarrow(settings, flange, 'the flange');
    refuseNarrowHalf(settings, box.depth, 'the depth');
    return { ...sizesOf(box), tab: tab.value, flange: flange.value };
  },
  shape: ({ width, depth, height, tab, flange }, corners) => ({
    net: layoutNet({
      columns: [depth, width, depth, width, tab],
      rows: [flange, depth.half(), height, depth],
      cells: [
        ['', 'front-flange', '', 'back-flange', ''],
        ['left-dust', 'front-top', 'right-dust', 'back-top', ''],
        ['left', 'front', 'right', 'back', 'tab'],
        ['left-bottom', 'front-bottom', 'right-bottom', 'back-bottom', ''],
      ],
      roles: { front: 'front', tab: 'tab' },
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
      corners,
    }),
  }),
});
