import { Length } from '../../measure/length.ts';
import type { Size } from '../../measure/size.ts';
import { customary, roundToMark } from '../forming/ruler.ts';
import type { Settings } from '../forming/settings.ts';
import type { FlatPoint } from '../net.ts';

/** How much of each upper corner of a tag is cut off, along both edges; a quarter of its width is common practice, no source. */
export function clipOf(settings: Settings, { width, height }: Size): Length {
  const { ruler } = settings;
  const edge = customary(ruler, 1, 8);
  const usual = roundToMark(ruler, Length.min(width.times(1, 4), height.half()));
  return settings.length('clip', usual, [
    { most: width.minus(edge).half(), why: 'the two cuts would meet in the middle of the upper edge' },
    { most: height.minus(edge), why: 'nothing is left of the sides below it' },
  ]);
}

/** The upper edge of a tag with its corners cut off, clockwise. */
export function clippedTop(width: Length, clip: Length): FlatPoint[] {
  const zero = Length.zero;
  return [
    { x: zero, y: clip },
    { x: clip, y: zero },
    { x: width.minus(clip), y: zero },
    { x: width, y: clip },
  ];
}
