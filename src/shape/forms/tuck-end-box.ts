import { Length } from '../../measure/length.ts';
import type { Form } from '../form.ts';
import { wallAllowance } from '../forming/allowance.ts';
import { readTab, sizeOfBox, TAB } from '../forming/box.ts';
import { form, optionalLength, optionalWord } from '../forming/form.ts';
import { mountain } from '../forming/layout.ts';
import { customary, roundToGroove } from '../forming/ruler.ts';

/** A box closed at both ends by a lid with a flap that tucks in behind the opposite wall. */
export const tuckEndBox: Form = form({
  name: 'tuck-end box',
  summary: 'A box closed above and below by lids whose flaps tuck in behind the opposite wall.',
  size: sizeOfBox(2),
  parameters: {
    tab: TAB,
    tuck: optionalLength(
      'length of the tuck flaps; 3/4 in (19 mm), or half the height where that is less, by default',
    ),
    ends: optionalWord(
      ['straight', 'reverse'],
      'straight: both lids hang on the back, so that the front is clean; reverse: the bottom one hangs on the front; straight by default',
    ),
  },
  panels: ['front', 'back', 'left', 'right', 'lid', 'bottom'],
  example: {
    settings: ['inside: 2 x 1 x 3 1/2'],
    layer: { panel: 'front', cut: '1 3/4 x 3 1/4' },
  },
  closing:
    'At each end fold the dust flaps in first, then the lid, and tuck its flap in behind the opposite wall.',
  measure: (settings, { width, depth, height, at }) => {
    const { ruler, caliper } = settings;
    const half = height.half();
    const tab = readTab(settings, depth, 'to the left side');
    const tuck = settings.length('tuck', Length.min(customary(ruler, 3, 4), roundToGroove(ruler, half)), [
      { most: half, why: 'the two flaps would meet halfway up the box' },
      settings.foldable,
    ]);
    const lid = depth.minus(wallAllowance(ruler, caliper, 2));
    settings.limit(lid, at.depth, 'the lid', settings.foldable);
    const dust = Length.min(lid, roundToGroove(ruler, width.half()));
    return { width, depth, height, tab, tuck, lid, dust, ends: settings.choice('ends') };
  },
  layout: ({ width, depth, height, tab, tuck, lid, dust, ends }) => {
    const reverse = ends === 'reverse';
    const [front, back] = reverse ? ['bottom', ''] : ['', 'bottom'];
    const [frontTuck, backTuck] = reverse ? ['bottom-tuck', ''] : ['', 'bottom-tuck'];
    const dustFlaps = ['left-dust', 'right-dust', 'left-bottom-dust', 'right-bottom-dust'];
    return {
      columns: [depth, width, depth, width, tab],
      rows: [tuck, lid, height, lid, tuck],
      cells: [
        ['', '', '', 'lid-tuck', ''],
        ['left-dust', '', 'right-dust', 'lid', ''],
        ['left', 'front', 'right', 'back', 'tab'],
        ['left-bottom-dust', front, 'right-bottom-dust', back, ''],
        ['', frontTuck, '', backTuck, ''],
      ],
      roles: { front: 'front' },
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
      shorten: { panels: dustFlaps, to: dust },
    };
  },
});
