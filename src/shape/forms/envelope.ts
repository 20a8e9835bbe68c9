import { Length } from '../../measure/length.ts';
import type { At } from '../../project/source.ts';
import type { Form } from '../form.ts';
import { wallAllowance } from '../forming/allowance.ts';
import { refuseNarrow } from '../forming/box.ts';
import { form } from '../forming/form.ts';
import { layoutNet, mountain } from '../forming/layout.ts';
import { customary, roundToGroove } from '../forming/ruler.ts';
import type { Settings } from '../forming/settings.ts';

/** The keys that say how large it is, of which one is given. */
const SIZES: readonly string[] = ['card', 'inside', 'outside'];

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
  parameters: [
    {
      key: 'card',
      kind: 'size',
      required: false,
      says: 'width x height of the card it is for; 1/4 in (6 mm) is added each way',
    },
    { key: 'inside', kind: 'size', required: false, says: 'width x height of the pocket, instead of card' },
    {
      key: 'outside',
      kind: 'size',
      required: false,
      says: 'width x height of the closed envelope, instead of card',
    },
    {
      key: 'flap',
      kind: 'length',
      required: false,
      says: 'height of the top flap; half the height of the envelope when not given',
    },
    {
      key: 'sides',
      kind: 'length',
      required: false,
      says: 'width of the side flaps; 3/4 in (19 mm) when not given',
    },
    {
      key: 'back',
      kind: 'length',
      required: false,
      says: 'height of the back; 1/2 in (13 mm) less than the envelope, or a quarter less where that is less, when not given',
    },
  ],
  oneOf: SIZES,
  panels: ['front', 'back', 'flap'],
  example: {
    settings: ['card: 6 x 4'],
    layer: { panel: 'front', cut: '6 x 4' },
  },
  closing: 'Let the side seams dry under a book before anything goes in.',
  accessory: true,
  measure: (settings) => {
    const size = readPocket(settings);
    if (!size) return undefined;
    const { ruler } = settings;
    const width = size.width.value;
    const height = size.height.value;
    const short = Length.min(customary(ruler, 1, 2), roundToGroove(ruler, height.times(1, 4)));
    const flap = settings.length('flap', roundToGroove(ruler, height.half()));
    const sides = settings.length(
      'sides',
      Length.min(customary(ruler, 3, 4), roundToGroove(ruler, width.half())),
    );
    const back = settings.length('back', height.minus(short));
    refuseNarrow(settings, flap, 'the flap');
    refuseNarrow(settings, sides, 'the side flap');
    refuseNarrow(settings, back, 'the back');
    settings.refuseOver(flap, height, 'the flap', 'it would reach past the lower edge');
    settings.refuseOver(back, height, 'the back', 'it would stand out over the upper edge');
    settings.refuseOver(sides, width.half(), 'the side flap', 'the two would meet inside');
    const written = settings.has('flap') ? flap.at : settings.has('back') ? back.at : size.height.at;
    refuseGap(settings, { value: height, at: written }, { flap: flap.value, back: back.value });
    return { width, height, flap: flap.value, sides: sides.value, back: back.value };
  },
  shape: ({ width, height, flap, sides, back }, corners) => ({
    net: layoutNet({
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
      corners,
    }),
  }),
});

type Pocket = { readonly width: At<Length>; readonly height: At<Length> };

/** Width and height between the score lines. */
function readPocket(settings: Settings): Pocket | undefined {
  const key = SIZES.find((each) => settings.has(each));
  const [width, height] = settings.lengths(key ?? '');
  if (!width || !height) return undefined;
  const allowance = wallAllowance(settings.ruler, settings.caliper, 2);
  const room = key === 'card' ? customary(settings.ruler, 1, 4) : Length.zero;
  const scored = ({ value, at }: At<Length>): At<Length> => ({
    value: key === 'outside' ? value.minus(allowance) : value.plus(allowance).plus(room),
    at,
  });
  const pocket = { width: scored(width), height: scored(height) };
  const least = customary(settings.ruler, 1, 1);
  settings.refuseUnder(
    pocket.width,
    least,
    'the width',
    'no room is left for two side flaps and what goes in',
  );
  settings.refuseUnder(
    pocket.height,
    least,
    'the height',
    'no room is left for a back and a flap that overlap',
  );
  return settings.findings.length > 0 ? undefined : pocket;
}

/** Refuses a top flap that does not reach far enough over the back to be stuck to it. */
function refuseGap(
  settings: Settings,
  height: At<Length>,
  { flap, back }: { readonly flap: Length; readonly back: Length },
): void {
  const reach = flap.plus(back);
  const least = height.value.plus(customary(settings.ruler, 1, 4));
  if (!reach.lessThan(least)) return;
  const message = `the flap (${settings.say(flap)}) and the back (${settings.say(back)}) of ${settings.piece} come to ${settings.say(reach)}, less than the ${settings.say(least)} that lets the flap be stuck down on the back`;
  settings.refuse(height.at, message, `make the flap at least ${settings.say(least.minus(back))} high`);
}
