import { ellipseIn } from '../tracing/curves.ts';
import type { Outline } from '../tracing/outline.ts';

export const oval: Outline = {
  name: 'oval',
  summary: 'An ellipse that fills its size.',
  said: 'oval',
  parameters: [],
  trace: ellipseIn,
};
