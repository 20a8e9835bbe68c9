import { Length } from '../../measure/length.ts';
import type { Form } from '../form.ts';
import { readTab, sizeOfBox, TAB } from '../forming/box.ts';
import { form, optionalLength } from '../forming/form.ts';
import { gableNet } from '../forming/gable.ts';
import { customary, roundToGroove } from '../forming/ruler.ts';

/**
 * A box to carry: two slopes of roof meet under a handle, and the gables fold in between them. Nothing but the seam and
 * the floor is glued. A roof three quarters as long as the box is deep, and handles of 1 in, are common practice, no
 * source.
 */
export const gableBox: Form = form({
  name: 'gable box',
  summary: 'A box to carry, with a sloping roof, gables that fold in, and a handle on top.',
  size: sizeOfBox(2),
  parameters: {
    roof: optionalLength(
      'how long each slope of the roof is, from the walls up to the handle; three quarters of the depth by default',
    ),
    handle: optionalLength('height of the two handles; 1 in (25 mm) by default'),
    tab: TAB,
  },
  panels: ['front', 'back', 'left', 'right', 'front-roof', 'back-roof'],
  example: {
    settings: ['inside: 3 x 1 1/2 x 2'],
    layer: { panel: 'front', cut: '2 3/4 x 1 3/4' },
  },
  closing:
    'Push the two gables in, bring the slopes of the roof together over them, and close the handles with a clothespin, or punch both at once and tie a ribbon through.',
  measure: (settings, { width, depth, height, at }) => {
    const { ruler } = settings;
    const why = 'its two gables would meet under the roof';
    settings.limit(depth, at.depth, 'the depth', { most: width, why }, settings.foldableInHalf);
    const least = depth.half().plus(customary(ruler, 1, 8));
    const roof = settings.length('roof', Length.max(roundToGroove(ruler, depth.times(3, 4)), least), [
      { least, why: 'the two slopes would lie flat or not meet' },
      { most: depth.times(2), why: 'so steep a roof has gables that no longer fold in' },
    ]);
    const handle = settings.length('handle', customary(ruler, 1, 1), [settings.foldable]);
    const tab = readTab(settings, width, 'inside the front');
    return { width, depth, height, roof, handle, tab };
  },
  net: gableNet,
});
