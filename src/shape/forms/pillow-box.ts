import { Length } from '../../measure/length.ts';
import type { Form } from '../form.ts';
import { refuseNarrow, TAB_PARAMETER, usualTab } from '../forming/box.ts';
import { form } from '../forming/form.ts';
import { PillowSheet, pillowNet } from '../forming/pillow.ts';
import { pillowStrips } from '../forming/pillow-strips.ts';
import { roundToGroove } from '../forming/ruler.ts';

/**
 * A flat tube whose curved ends press in, so that its walls bulge. Each curve is the arc of a circle; it reaches half
 * the depth into the body, and the body bulges by as much (see `pillow-strips.ts` for why). The usual depth is common
 * practice, no source.
 */
export const pillowBox: Form = form({
  name: 'pillow box',
  summary: 'A flat tube whose curved ends press in, so that it swells like a pillow.',
  parameters: [
    {
      key: 'size',
      kind: 'size',
      required: true,
      says: 'width x length of the body laid flat, from fold to fold and from curve end to curve end',
    },
    {
      key: 'depth',
      kind: 'length',
      required: false,
      says: 'thickness in the middle once the ends are pressed in, at most two fifths of the width; a quarter of the width when not given',
    },
    TAB_PARAMETER,
  ],
  panels: ['front', 'back'],
  example: {
    settings: ['size: 3 x 4 1/2', 'depth: 1'],
    layer: { panel: 'front', cut: '2 3/4 x 3 1/4' },
  },
  closing:
    'Let the glue dry while it lies flat, then press the two flaps of each end in, one over the other.',
  measure: (settings) => {
    const [width, length] = settings.lengths('size');
    if (!width || !length) return undefined;
    refuseNarrow(settings, width, 'the width');
    refuseNarrow(settings, length, 'the length');
    const usualDepth = roundToGroove(settings.ruler, width.value.times(1, 4));
    const depth = settings.length('depth', Length.min(usualDepth, width.value.times(2, 5)));
    const tab = settings.length('tab', usualTab(settings, width.value));
    const steep = 'its curves would be too steep for the flaps to close';
    settings.refuseOver(depth, width.value.times(2, 5), 'the depth', steep);
    settings.refuseOver(tab, width.value, 'the tab', 'it is glued inside the front, which is only that wide');
    if (settings.corners) {
      const message = `${settings.piece} is a pillow box, which has no corners to round`;
      settings.refuse(settings.corners.at, message, 'take "corners" out');
    }
    const close = 'the curves of its two ends would come too close';
    settings.refuseUnder(length, depth.value.times(2), 'the length', close);
    return { width: width.value, length: length.value, rise: depth.value.half(), tab: tab.value };
  },
  shape: (measures) => {
    const net = pillowNet(measures);
    return { net: { ...net, strips: pillowStrips(new PillowSheet(measures), net) } };
  },
});
