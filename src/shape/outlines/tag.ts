import { Length } from '../../measure/length.ts';
import { clipOf, clippedTop } from '../tracing/clipped.ts';
import type { Outline } from '../tracing/outline.ts';

export const tag: Outline = {
  name: 'tag',
  summary:
    'A rectangle with its two upper corners cut off at 45 degrees. With a hole for a string it is a form.',
  said: 'tag with {clip} cut off each upper corner',
  parameters: [
    {
      key: 'clip',
      kind: 'length',
      required: false,
      says: 'Of a `tag`: how much is cut off each upper corner; a quarter of the width by default.',
    },
  ],
  trace: (size, settings) => {
    const clip = clipOf(settings, size);
    return [
      ...clippedTop(size.width, clip),
      { x: size.width, y: size.height },
      { x: Length.zero, y: size.height },
    ];
  },
};
