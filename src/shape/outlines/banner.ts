import { Length } from '../../measure/length.ts';
import { customary, roundToMark } from '../forming/ruler.ts';
import { boxCorners } from '../outline.ts';
import type { Outline } from '../tracing/outline.ts';

export const banner: Outline = {
  name: 'banner',
  summary: 'A strip with a notch cut into one end: the lower one if it is upright, else the right one.',
  said: 'banner with a notch {notch} deep',
  parameters: [
    {
      key: 'notch',
      kind: 'length',
      required: false,
      says: 'Of a `banner`: how deep its notch is; half of its width by default.',
    },
  ],
  trace: ({ width, height }, settings) => {
    const isUpright = !width.greaterThan(height);
    const [end, long] = isUpright ? [width, height] : [height, width];
    const usual = roundToMark(settings.ruler, Length.min(end.half(), long.half()));
    const most = long.minus(customary(settings.ruler, 1, 8));
    const why = `it is ${settings.say(long)} long, and nothing would be left above the notch`;
    const notch = settings.length('notch', usual, [{ most, why }]);
    const [topLeft, topRight, bottomRight, bottomLeft] = boxCorners({
      left: Length.zero,
      top: Length.zero,
      right: width,
      bottom: height,
    });
    const middle = isUpright
      ? { x: width.half(), y: height.minus(notch) }
      : { x: width.minus(notch), y: height.half() };
    return isUpright
      ? [topLeft, topRight, bottomRight, middle, bottomLeft]
      : [topLeft, topRight, middle, bottomRight, bottomLeft];
  },
};
