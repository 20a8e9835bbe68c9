import { Length } from '../../measure/length.ts';
import { arcPoints } from '../forming/arc.ts';
import type { Outline } from '../tracing/outline.ts';

/** Straight stretches that stand for its arc; every point lies exactly on it. */
const STRETCHES = 32;

export const arch: Outline = {
  name: 'arch',
  summary: 'A rectangle with a round top, like a window or a door.',
  said: 'arch with a round top {rise} high',
  parameters: [
    {
      key: 'rise',
      kind: 'length',
      required: false,
      says: 'Of an `arch`: how high its round part is; half of its width by default, a half circle.',
    },
  ],
  trace: ({ width, height }, settings) => {
    const most = Length.min(width.half(), height);
    const rise = settings.length('rise', most, [
      { most: width.half(), why: 'more than half the width is no arc of a circle' },
      { most: height, why: 'the arch is no higher than that' },
    ]);
    const arc = arcPoints(width, Length.min(rise, most), STRETCHES);
    return [
      ...arc.map((point) => ({ x: point.along, y: rise.minus(point.rise) })),
      { x: width, y: height },
      { x: Length.zero, y: height },
    ];
  },
};
