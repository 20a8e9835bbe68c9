import { Length } from '../../measure/length.ts';
import type { At, Place } from '../../project/source.ts';
import type { Form } from '../form.ts';
import { wallAllowance } from '../forming/allowance.ts';
import type { Measured } from '../forming/box.ts';
import { form, optional, optionalLength } from '../forming/form.ts';
import { mountain } from '../forming/layout.ts';
import { customary, roundToGroove } from '../forming/ruler.ts';
import type { Settings } from '../forming/settings.ts';

/**
 * An envelope of straight score lines, which any score board makes: two side flaps fold in, the back folds up over
 * them and is glued to them, the top flap folds down. Diagonal flaps would need lines scored corner to corner, where
 * no fence guides the board.
 *
 * A card gets 1/4 in (6 mm) more room than it measures, in both directions: trade pages agree on it for announcement
 * envelopes, no standard fixes it. Side flaps of 3/4 in, a top flap of half the height and a back that ends 1/2 in
 * below the upper edge are common practice, no source.
 */
export const envelope: Form = form({
  name: 'envelope',
  summary: 'An envelope with straight flaps, scored on any board.',
  size: {
    parameters: {
      card: optional('size', 'width x height of the card it is for; 1/4 in (6 mm) is added each way'),
      inside: optional('size', 'width x height of the pocket, instead of card'),
      outside: optional('size', 'width x height of the closed envelope, instead of card'),
    },
    alternatives: true,
    read: readPocket,
  },
  parameters: {
    flap: optionalLength('height of the top flap; half the height of the envelope by default'),
    sides: optionalLength('width of the side flaps; 3/4 in (19 mm) by default'),
    back: optionalLength(
      'height of the back; 1/2 in (13 mm) less than the envelope, or a quarter less where that is less, by default',
    ),
  },
  panels: ['front', 'back', 'flap'],
  example: {
    settings: ['card: 6 x 4'],
    layer: { panel: 'front', cut: '6 x 4' },
  },
  closing: 'Let the side seams dry under a book before anything goes in.',
  accessory: true,
  mailed: 'envelope',
  measure: (settings, { width, height, at }) => {
    const { ruler } = settings;
    const short = Length.min(customary(ruler, 1, 2), roundToGroove(ruler, height.times(1, 4)));
    const narrow = Length.min(customary(ruler, 3, 4), roundToGroove(ruler, width.half()));
    const flap = settings.length('flap', roundToGroove(ruler, height.half()), [
      settings.foldable,
      { most: height, why: 'it would reach past the lower edge' },
    ]);
    const sides = settings.length(
      'sides',
      narrow,
      [settings.foldable, { most: width.half(), why: 'the two would meet inside' }],
      'the side flap',
    );
    const back = settings.length('back', height.minus(short), [
      settings.foldable,
      { most: height, why: 'it would stand out over the upper edge' },
    ]);
    const [written] = [...settings.lengths('flap'), ...settings.lengths('back')];
    refuseGap(settings, written?.at ?? at.height, { height, flap, back });
    return { width, height, flap, sides, back };
  },
  layout: ({ width, height, flap, sides, back }) => ({
    columns: [sides, width, sides],
    rows: [flap, height, back],
    cells: [
      ['', 'flap', ''],
      ['left-flap', 'front', 'right-flap'],
      ['', 'back', ''],
    ],
    roles: { front: 'front' },
    bends: [
      mountain(1, ['left-flap|front', 'front|right-flap'], 180),
      mountain(2, ['front|back'], 180),
      mountain(3, ['flap|front'], 180),
    ],
    taper: ['flap', 'left-flap', 'right-flap'],
    glue: [
      ['left-flap', 'back'],
      ['right-flap', 'back'],
    ],
    opens: ['flap'],
  }),
});

/** Width and height between the score lines. */
function readPocket(settings: Settings): Measured<'width' | 'height'> | undefined {
  const key = ['card', 'inside', 'outside'].find((each) => settings.has(each));
  const [width, height] = settings.lengths(key ?? '');
  if (!width || !height) return undefined;
  const allowance = wallAllowance(settings.ruler, settings.caliper, 2);
  const room = key === 'card' ? customary(settings.ruler, 1, 4) : Length.zero;
  const least = customary(settings.ruler, 1, 1);
  const scored = ({ value, at }: At<Length>, what: string, why: string): Length => {
    const length = key === 'outside' ? value.minus(allowance) : value.plus(allowance).plus(room);
    settings.limit(length, at, what, { least, why });
    return length;
  };
  const pocket = {
    width: scored(width, 'the width', 'no room is left for two side flaps and what goes in'),
    height: scored(height, 'the height', 'no room is left for a back and a flap that overlap'),
    at: { width: width.at, height: height.at },
  };
  return settings.findings.length > 0 ? undefined : pocket;
}

/** Refuses a top flap that does not reach far enough over the back to be stuck to it. */
function refuseGap(
  settings: Settings,
  at: Place,
  { height, flap, back }: Readonly<Record<'height' | 'flap' | 'back', Length>>,
): void {
  const reach = flap.plus(back);
  const least = height.plus(customary(settings.ruler, 1, 4));
  if (!reach.lessThan(least)) return;
  const message = `the flap (${settings.say(flap)}) and the back (${settings.say(back)}) of ${settings.piece} come to ${settings.say(reach)}, less than the ${settings.say(least)} that lets the flap be stuck down on the back`;
  settings.refuse(at, message, `make the flap at least ${settings.say(least.minus(back))} high`);
}
