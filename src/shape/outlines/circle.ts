import { ellipseIn } from '../tracing/curves.ts';
import type { Outline } from '../tracing/outline.ts';
import { refuseUnequal } from '../tracing/round.ts';

export const circle: Outline = {
  name: 'circle',
  summary: 'A circle, as wide as it is high.',
  said: 'circle',
  parameters: [],
  trace: (size, settings, written) => {
    refuseUnequal(settings, written, 'a circle', 'oval');
    return ellipseIn(size);
  },
};
