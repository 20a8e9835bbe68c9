import { CIRCLE, ellipseIn } from '../tracing/curves.ts';
import type { Outline } from '../tracing/outline.ts';
import { refuseUnequal } from '../tracing/round.ts';

export const circle: Outline = {
  name: CIRCLE.name,
  summary: 'A circle, as wide as it is high.',
  said: 'circle',
  across: CIRCLE.across,
  round: CIRCLE.round,
  parameters: [],
  trace: (size, settings, written) => {
    refuseUnequal(settings, written, 'a circle', 'oval');
    return ellipseIn(size);
  },
};
