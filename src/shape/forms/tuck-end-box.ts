import { Length } from '../../measure/length.ts';
import type { Form } from '../form.ts';
import { wallAllowance } from '../forming/allowance.ts';
import {
  BOX_PARAMETERS,
  BOX_SIZES,
  readBox,
  refuseNarrow,
  sizesOf,
  TAB_PARAMETER,
  usualTab,
} from '../forming/box.ts';
import { cutBack } from '../forming/cut-back.ts';
import { form } from '../forming/form.ts';
import { layoutNet, mountain } from '../forming/layout.ts';
import { customary, roundToGroove } from '../forming/ruler.ts';

/** A box closed at both ends by a lid with a flap that tucks in behind the opposite wall. */
export const tuckEndBox: Form = form({
  name: 'tuck-end box',
  summary: 'A box closed above and below by lids whose flaps tuck in behind the opposite wall.',
  parameters: [
    ...BOX_PARAMETERS,
    TAB_PARAMETER,
    {
      key: 'tuck',
      kind: 'length',
      required: false,
      says: 'length of the tuck flaps; 3/4 in (19 mm), or half the height where that is less, when not given',
    },
    {
      key: 'ends',
      kind: 'choice',
      choices: ['straight', 'reverse'],
      required: false,
      says: 'straight: both lids hang on the back, so that the front is clean; reverse: the bottom one hangs on the front; straight when not given',
    },
  ],
  oneOf: BOX_SIZES,
  panels: ['front', 'back', 'left', 'right', 'lid', 'bottom'],
  example: {
    settings: ['inside: 2 x 1 x 3 1/2'],
    layer: { panel: 'front', cut: '1 3/4 x 3 1/4' },
  },
  closing:
    'At each end fold the dust flaps in first, then the lid, and tuck its flap in behind the opposite wall.',
  measure: (settings) => {
    const box = readBox(settings, 2);
    if (!box) return undefined;
    const sizes = sizesOf(box);
    const { ruler, caliper } = settings;
    const half = sizes.height.half();
    const tab = settings.length('tab', usualTab(settings, sizes.depth));
    const tuck = settings.length('tuck', Length.min(customary(ruler, 3, 4), roundToGroove(ruler, half)));
    settings.refuseOver(tab, sizes.depth, 'the tab', 'it is glued to the left side, which is only that wide');
    settings.refuseOver(tuck, half, 'the tuck', 'the two flaps would meet halfway up the box');
    refuseNarrow(settings, tuck, 'the tuck');
    const lid = sizes.depth.minus(wallAllowance(ruler, caliper, 2));
    refuseNarrow(settings, { value: lid, at: box.depth.at }, 'the lid');
    const dust = Length.min(lid, roundToGroove(ruler, sizes.width.half()));
    return { ...sizes, tab: tab.value, tuck: tuck.value, lid, dust, ends: settings.choice('ends') };
  },
  shape: ({ width, depth, height, tab, tuck, lid, dust, ends }, corners) => {
    const reverse = ends === 'reverse';
    const [front, back] = reverse ? ['bottom', ''] : ['', 'bottom'];
    const [frontTuck, backTuck] = reverse ? ['bottom-tuck', ''] : ['', 'bottom-tuck'];
    const dustFlaps = ['left-dust', 'right-dust', 'left-bottom-dust', 'right-bottom-dust'];
    const net = layoutNet({
      columns: [depth, width, depth, width, tab],
      rows: [tuck, lid, height, lid, tuck],
      cells: [
        ['', '', '', 'lid-tuck', ''],
        ['left-dust', '', 'right-dust', 'lid', ''],
        ['left', 'front', 'right', 'back', 'tab'],
        ['left-bottom-dust', front, 'right-bottom-dust', back, ''],
        ['', frontTuck, '', backTuck, ''],
      ],
      roles: { front: 'front', tab: 'tab' },
      bends: [
        mountain(1, ['left|front', 'front|right', 'right|back', 'back|tab']),
        mountain(2, ['left|left-bottom-dust', 'right|right-bottom-dust']),
        mountain(3, ['bottom|bottom-tuck']),
        mountain(4, [reverse ? 'front|bottom' : 'back|bottom']),
        mountain(5, ['left|left-dust', 'right|right-dust']),
        mountain(6, ['lid|lid-tuck']),
        mountain(7, ['back|lid']),
      ],
      taper: ['tab', 'lid-tuck', 'bottom-tuck', ...dustFlaps],
      glue: [['tab', 'left']],
      corners,
    });
    return { net: cutBack(net, dustFlaps, dust) };
  },
});
