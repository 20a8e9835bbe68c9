import { Length } from '../../measure/length.ts';
import { roundUp } from '../../measure/round.ts';
import type { Form } from '../form.ts';
import {
  BOX_PARAMETERS,
  BOX_SIZES,
  readBox,
  refuseNarrowHalf,
  sizesOf,
  TAB_PARAMETER,
  usualTab,
} from '../forming/box.ts';
import { form } from '../forming/form.ts';
import { type Bend, layoutNet, mountain } from '../forming/layout.ts';

/**
 * A bag of cardstock with a flat bottom, whose sides are scored down the middle so that it folds flat. Drawn and
 * proofed standing open; the gusset scores are left flat there.
 */
export const gussetedBag: Form = form({
  name: 'gusseted bag',
  summary: 'An open bag with a flat bottom and sides that fold inward.',
  parameters: [...BOX_PARAMETERS, TAB_PARAMETER],
  oneOf: BOX_SIZES,
  panels: ['front', 'back', 'left-front', 'left-back', 'right-front', 'right-back'],
  example: {
    settings: ['inside: 3 x 2 x 5'],
    layer: { panel: 'front', cut: '2 3/4 x 4 3/4' },
  },
  closing:
    'Close the bottom over something flat, such as the end of a ruler. To fold the bag flat, push both sides in along their middle score.',
  measure: (settings) => {
    const box = readBox(settings, 1);
    if (!box) return undefined;
    const sizes = sizesOf(box);
    const tab = settings.length('tab', usualTab(settings, sizes.width));
    const gusset = sizes.depth.half();
    const bottom = Length.min(
      sizes.depth,
      roundUp(gusset, settings.ruler.groove).plus(usualTab(settings, sizes.width)),
    );
    settings.refuseOver(tab, sizes.width, 'the tab', 'it is glued inside the back, which is only that wide');
    refuseNarrowHalf(settings, box.depth, 'the depth');
    if (bottom.greaterThan(sizes.width)) {
      const message = `${settings.piece} is ${settings.say(sizes.depth)} deep and ${settings.say(sizes.width)} wide: its bottom flaps, ${settings.say(bottom)} long, are longer than the opening is wide`;
      settings.refuse(box.depth.at, message, `make it wider, or no deeper than ${settings.say(sizes.width)}`);
    }
    return { ...sizes, tab: tab.value, gusset, bottom };
  },
  shape: ({ width, height, tab, gusset, bottom }, corners) => ({
    net: layoutNet({
      columns: [width, gusset, gusset, width, gusset, gusset, tab],
      rows: [height, bottom],
      cells: [
        ['back', 'left-back', 'left-front', 'front', 'right-front', 'right-back', 'tab'],
        [
          'back-bottom',
          'left-back-bottom',
          'left-front-bottom',
          'front-bottom',
          'right-front-bottom',
          'right-back-bottom',
          '',
        ],
      ],
      roles: { front: 'front', tab: 'tab' },
      bends: [
        leftOpen(['left-back|left-front', 'right-front|right-back']),
        leftOpen(['left-back-bottom|left-front-bottom', 'right-front-bottom|right-back-bottom']),
        mountain(1, ['back|left-back', 'left-front|front', 'front|right-front', 'right-back|tab']),
        mountain(2, ['left-back|left-back-bottom', 'left-front|left-front-bottom']),
        mountain(2, ['right-front|right-front-bottom', 'right-back|right-back-bottom']),
        mountain(3, ['back|back-bottom']),
        mountain(4, ['front|front-bottom']),
      ],
      taper: ['tab'],
      glue: [
        ['tab', 'back'],
        ['left-back-bottom', 'back-bottom'],
        ['right-back-bottom', 'back-bottom'],
        ['front-bottom', 'back-bottom'],
      ],
      corners,
    }),
  }),
});

function leftOpen(pairs: readonly string[]): Bend {
  return { pairs, direction: 'flat', angle: 0, stage: 1 };
}
