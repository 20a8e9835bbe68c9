import { Length } from '../../measure/length.ts';
import type { Form } from '../form.ts';
import { refuseNarrow } from '../forming/box.ts';
import { CARD_SIZE } from '../forming/card.ts';
import { form } from '../forming/form.ts';
import { customary, roundToGroove } from '../forming/ruler.ts';
import type { FlatBox, FlatPoint, Net } from '../net.ts';
import { cutCell } from '../outline.ts';

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
  parameters: [
    { ...CARD_SIZE, says: 'width x height of the tag' },
    {
      key: 'clip',
      kind: 'length',
      required: false,
      says: 'how much is cut off each upper corner, along both edges; a quarter of the width when not given',
    },
    {
      key: 'hole',
      kind: 'length',
      required: false,
      says: 'diameter of the hole; 1/4 in (6 mm) when not given',
    },
  ],
  panels: ['tag'],
  example: { settings: ['size: 2 x 4', 'clip: 1/2'] },
  closing: 'Punch the hole and thread the string.',
  accessory: true,
  measure: (settings) => {
    const [width, height] = settings.lengths('size');
    if (!width || !height) return undefined;
    const { ruler } = settings;
    const clip = settings.length(
      'clip',
      roundToGroove(ruler, Length.min(width.value.times(1, 4), height.value.half())),
    );
    const hole = settings.length('hole', customary(ruler, 1, 4));
    const edge = customary(ruler, 1, 8);
    refuseNarrow(settings, width, 'the width');
    refuseNarrow(settings, height, 'the height');
    const top = width.value.minus(edge).half();
    settings.refuseOver(clip, top, 'the clip', 'the two cuts would meet in the middle of the upper edge');
    settings.refuseOver(clip, height.value.minus(edge), 'the clip', 'nothing is left of the sides below it');
    const down = customary(ruler, 1, 4).plus(hole.value.half());
    const need = `its hole of ${settings.say(hole.value)} needs that much`;
    settings.refuseUnder(width, hole.value.plus(edge.times(2)), 'the width', need);
    settings.refuseUnder(height, down.plus(hole.value.half()).plus(edge), 'the height', need);
    return {
      width: width.value,
      height: height.value,
      clip: clip.value,
      hole: { diameter: hole.value, down },
    };
  },
  shape: (measures, corners) => ({ net: tagNet(measures, corners) }),
});

function tagNet({ width, height, clip, hole }: TagMeasures, corners: Length | undefined): Net {
  const zero = Length.zero;
  const box: FlatBox = { left: zero, top: zero, right: width, bottom: height };
  const held = { left: false, top: true, right: false, bottom: false };
  const below = cutCell(
    box,
    held,
    corners ? { kind: 'round', radius: Length.min(corners, height.minus(clip)) } : { kind: 'square' },
  );
  const outline: FlatPoint[] = [
    { x: zero, y: clip },
    { x: clip, y: zero },
    { x: width.minus(clip), y: zero },
    { x: width, y: clip },
    ...below.outline.slice(2),
  ];
  // A round corner may begin where the clip ends.
  const isRepeated = ({ x, y }: FlatPoint, index: number): boolean => {
    const before = outline.at(index - 1);
    return before !== undefined && x.equals(before.x) && y.equals(before.y);
  };
  const left = [
    { x: zero, y: zero },
    { x: clip, y: zero },
    { x: zero, y: clip },
  ];
  const right = [
    { x: width.minus(clip), y: zero },
    { x: width, y: zero },
    { x: width, y: clip },
  ];
  return {
    size: { width, height },
    panels: [
      { id: 'tag', name: 'tag', outline: outline.filter((point, index) => !isRepeated(point, index)), box },
    ],
    folds: [],
    scores: [],
    slits: [],
    waste: [left, right, ...below.waste],
    glue: [],
    holes: [{ centre: { x: width.half(), y: hole.down }, diameter: hole.diameter }],
  };
}
