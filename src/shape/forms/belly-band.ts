import type { Length } from '../../measure/length.ts';
import { roundUp } from '../../measure/round.ts';
import type { Form } from '../form.ts';
import { ease } from '../forming/allowance.ts';
import { refuseNarrow, TAB_PARAMETER, usualTab } from '../forming/box.ts';
import { form } from '../forming/form.ts';
import { layoutNet, mountain } from '../forming/layout.ts';
import { customary } from '../forming/ruler.ts';
import type { Net } from '../net.ts';

type Band = {
  readonly width: Length;
  /** Absent for a band about something flat. */
  readonly depth?: Length;
  readonly height: Length;
  readonly tab: Length;
};

/**
 * A band about a card, a stack or a box, glued behind. About something under 1/8 in (3 mm) thick it is folded flat
 * at both sides; about anything thicker it has side panels. It is a little larger than what it goes about, so that
 * it slides: common practice, no source.
 */
export const bellyBand: Form = form({
  name: 'belly band',
  summary: 'A band that goes about a card, a stack or a box and is glued behind.',
  parameters: [
    {
      key: 'around',
      kind: 'size',
      required: true,
      says: 'width x thickness of what the band goes about; the paper and a little room to slide are added',
    },
    {
      key: 'height',
      kind: 'length',
      required: false,
      says: 'height of the band; 1 1/2 in (38 mm) when not given',
    },
    { ...TAB_PARAMETER, says: 'how far the ends overlap; 1/2 in (13 mm) when not given' },
  ],
  panels: ['front', 'back', 'left', 'right'],
  example: {
    settings: ['around: 4 1/4 x 1/16', 'height: 1 1/2'],
  },
  closing: 'Do it about the very thing the band is for, and slide it off to dry.',
  accessory: true,
  measure: (settings) => {
    const [width, depth] = settings.lengths('around');
    if (!width || !depth) return undefined;
    const { ruler, caliper } = settings;
    const height = settings.length('height', customary(ruler, 3, 2));
    const spare = caliper.times(2).plus(ease(ruler));
    const flat = depth.value.lessThan(customary(ruler, 1, 8));
    const room = flat ? width.value.plus(depth.value) : width.value;
    const panel = roundUp(room.plus(spare), ruler.groove);
    const tab = settings.length('tab', usualTab(settings, panel));
    refuseNarrow(settings, width, 'the width');
    refuseNarrow(settings, height, 'the height');
    settings.refuseOver(tab, panel, 'the tab', 'it is glued inside the back, which is only that wide');
    const band: Band = { width: panel, height: height.value, tab: tab.value };
    return flat ? band : { ...band, depth: roundUp(depth.value.plus(spare), ruler.groove) };
  },
  shape: (band, corners) => ({
    net: band.depth ? deepBand({ ...band, depth: band.depth }, corners) : flatBand(band, corners),
  }),
});

function flatBand({ width, height, tab }: Band, corners: Length | undefined): Net {
  return layoutNet({
    columns: [width, width, tab],
    rows: [height],
    cells: [['back', 'front', 'tab']],
    roles: { front: 'front', tab: 'tab' },
    bends: [mountain(1, ['back|front', 'front|tab'], 180)],
    taper: ['tab'],
    glue: [['tab', 'back']],
    corners,
  });
}

function deepBand(
  { width, depth, height, tab }: Band & { readonly depth: Length },
  corners: Length | undefined,
): Net {
  return layoutNet({
    columns: [width, depth, width, depth, tab],
    rows: [height],
    cells: [['back', 'left', 'front', 'right', 'tab']],
    roles: { front: 'front', tab: 'tab' },
    bends: [mountain(1, ['back|left', 'left|front', 'front|right', 'right|tab'])],
    taper: ['tab'],
    glue: [['tab', 'back']],
    corners,
  });
}
