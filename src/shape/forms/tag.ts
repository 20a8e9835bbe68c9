import { Length } from '../../measure/length.ts';
import type { RoundedCorners } from '../../project/corners.ts';
import type { Form } from '../form.ts';
import { sizeOfCard } from '../forming/box.ts';
import { form, optionalLength } from '../forming/form.ts';
import { customary } from '../forming/ruler.ts';
import type { FlatBox, Net, Opening } from '../net.ts';
import { cutCorners } from '../outline.ts';
import { clipOf, clippedTop } from '../tracing/clipped.ts';
import { CIRCLE, ellipseIn } from '../tracing/curves.ts';
import { wasteRound } from '../tracing/waste.ts';

type TagMeasures = {
  readonly width: Length;
  readonly height: Length;
  readonly clip: Length;
  readonly hole: { readonly diameter: Length; readonly down: Length };
};

/** A tag with its two upper corners cut at 45 degrees and a hole for a string. Its usual corners and hole are common practice, no source. */
export const tag: Form = form({
  name: 'tag',
  summary: 'A tag with two cut corners and a punched hole for a string.',
  size: sizeOfCard('width x height of the tag'),
  parameters: {
    clip: optionalLength(
      'how much is cut off each upper corner, along both edges; a quarter of the width by default',
    ),
    hole: optionalLength('diameter of the hole; 1/4 in (6 mm) by default'),
  },
  panels: ['tag'],
  example: { settings: ['size: 2 x 4', 'clip: 1/2'] },
  closing: 'Punch the hole and thread the string.',
  accessory: true,
  measure: (settings, { width, height, at }) => {
    const { ruler } = settings;
    const edge = customary(ruler, 1, 8);
    const clip = clipOf(settings, { width, height });
    const diameter = settings.length('hole', customary(ruler, 1, 4));
    const down = customary(ruler, 1, 4).plus(diameter.half());
    const why = `its hole of ${settings.say(diameter)} needs that much`;
    settings.limit(width, at.width, 'the width', { least: diameter.plus(edge.times(2)), why });
    settings.limit(height, at.height, 'the height', { least: down.plus(diameter.half()).plus(edge), why });
    return { width, height, clip, hole: { diameter, down } };
  },
  net: tagNet,
});

function tagNet({ width, height, clip, hole }: TagMeasures, corners: RoundedCorners | undefined): Net {
  const zero = Length.zero;
  const box: FlatBox = { left: zero, top: zero, right: width, bottom: height };
  const below = [
    { x: width, y: height },
    { x: zero, y: height },
  ];
  const cut = corners ? ({ kind: 'round', corners } as const) : ({ kind: 'square' } as const);
  const { outline } = cutCorners([...clippedTop(width, clip), ...below], [], cut);
  return {
    size: { width, height },
    called: { name: 'tag', counts: {}, lengths: { clip } },
    panels: [{ id: 'tag', name: 'tag', outline, box }],
    folds: [],
    scores: [],
    slits: [],
    waste: wasteRound(outline, { width, height }),
    glue: [],
    openings: [holeIn(box, hole)],
  };
}

function holeIn({ right, bottom }: FlatBox, { diameter, down }: TagMeasures['hole']): Opening {
  const size = { width: diameter, height: diameter };
  const margin = right.minus(diameter).half();
  const top = down.minus(diameter.half());
  return {
    name: 'hole',
    panel: 'tag',
    how: 'punched',
    shape: CIRCLE,
    size,
    outline: ellipseIn(size).map(({ x, y }) => ({ x: x.plus(margin), y: y.plus(top) })),
    margins: { left: margin, right: margin, top, bottom: bottom.minus(top).minus(diameter) },
    centered: { across: true, upright: false },
  };
}
