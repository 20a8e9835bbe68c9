import { Length } from '../../measure/length.ts';
import type { Form } from '../form.ts';
import { readTab, TAB } from '../forming/box.ts';
import { form, optionalLength } from '../forming/form.ts';
import { PillowSheet, pillowNet } from '../forming/pillow.ts';
import { pillowStrips } from '../forming/pillow-strips.ts';
import { roundToMark } from '../forming/ruler.ts';

/**
 * A flat tube whose curved ends press in, so that its walls bulge. Each curve is the arc of a circle; it reaches half
 * the depth into the body, and the body bulges by as much (see `pillow-strips.ts` for why). The usual depth is common
 * practice, no source.
 */
export const pillowBox: Form = form({
  name: 'pillow box',
  summary: 'A flat tube whose curved ends press in, so that it swells like a pillow.',
  size: {
    parameters: {
      size: {
        kind: 'size',
        required: true,
        says: 'width x length of the body laid flat, from fold to fold and from curve end to curve end',
      },
    },
    read: (settings) => {
      const [width, length] = settings.lengths('size');
      return width && length && { width, length };
    },
  },
  parameters: {
    depth: optionalLength(
      'thickness in the middle once the ends are pressed in, at most two fifths of the width; a quarter of the width by default',
    ),
    tab: TAB,
  },
  panels: ['front', 'back'],
  example: {
    settings: ['size: 3 x 4 1/2', 'depth: 1'],
    layer: { panel: 'front', cut: '2 3/4 x 3 1/4' },
  },
  closing: 'Let the glue dry with the box flat, then press in the two flaps at each end, one over the other.',
  measure: (settings, { width: { value: width, at }, length }) => {
    settings.limit(width, at, 'the width', settings.foldable);
    const most = width.times(2, 5);
    // Half of it is cut, and has to lie on a mark.
    const half = roundToMark(settings.ruler, width.times(1, 8));
    const usual = Length.min(half.times(2), most);
    const why = 'its curves would be too steep for the flaps to close';
    const depth = settings.length('depth', usual, [{ most, why }]);
    const tab = readTab(settings, width, 'inside the front');
    const [rounding] = settings.corners ?? [];
    if (rounding) {
      const message = `${settings.piece} is a pillow box, which has no corners to round`;
      settings.refuse(rounding.radius.at, message, 'take "corners" out');
    }
    const close = { least: depth.times(2), why: 'the curves of its two ends would come too close' };
    settings.limit(length.value, length.at, 'the length', settings.foldable, close);
    return { width, length: length.value, rise: depth.half(), tab };
  },
  net: (measures) => {
    const net = pillowNet(measures);
    return { ...net, strips: pillowStrips(new PillowSheet(measures), net) };
  },
});
