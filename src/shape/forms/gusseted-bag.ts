import { Length } from '../../measure/length.ts';
import { roundUp } from '../../measure/round.ts';
import type { Form } from '../form.ts';
import { readTab, sizeOfBox, TAB, usualTab } from '../forming/box.ts';
import { form } from '../forming/form.ts';
import { type Bend, mountain } from '../forming/layout.ts';

/**
 * A bag of cardstock with a flat bottom, whose sides are scored down the middle so that it folds flat. Drawn and
 * proofed standing open; the gusset scores are left flat there.
 */
export const gussetedBag: Form = form({
  name: 'gusseted bag',
  summary: 'An open bag with a flat bottom and sides that fold inward.',
  size: sizeOfBox(1),
  parameters: { tab: TAB },
  panels: ['front', 'back', 'left-front', 'left-back', 'right-front', 'right-back'],
  example: {
    settings: ['inside: 3 x 2 x 5'],
    layer: { panel: 'front', cut: '2 3/4 x 4 3/4' },
  },
  closing:
    'Close the bottom over something flat, such as the end of a ruler. To fold the bag flat, push both sides in along their middle score.',
  measure: (settings, { width, depth, height, at }) => {
    const tab = readTab(settings, width, 'inside the back');
    const gusset = depth.half();
    const glued = roundUp(gusset, settings.ruler.groove).plus(usualTab(settings, width));
    const bottom = Length.min(depth, glued);
    settings.limit(depth, at.depth, 'the depth', settings.foldableInHalf);
    if (bottom.greaterThan(width)) {
      const message = `${settings.piece} is ${settings.say(depth)} deep and ${settings.say(width)} wide: its bottom flaps, ${settings.say(bottom)} long, are longer than the opening is wide`;
      settings.refuse(at.depth, message, `make it wider, or no deeper than ${settings.say(width)}`);
    }
    return { width, height, tab, gusset, bottom };
  },
  layout: ({ width, height, tab, gusset, bottom }) => ({
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
    roles: { front: 'front' },
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
  }),
});

function leftOpen(pairs: readonly string[]): Bend {
  return { pairs, direction: 'flat', angle: 0, stage: 1 };
}
