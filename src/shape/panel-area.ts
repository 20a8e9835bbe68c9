import { boxSize, type FlatBox, type Net, type Panel } from './net.ts';

/** In square millimeters. */
export function boxArea(box: FlatBox): number {
  const { width, height } = boxSize(box);
  return width.mm * height.mm;
}

/** The panel with the largest box, the first of equals; undefined of a net without panels. */
export function largestPanel({ panels }: Net): Panel | undefined {
  return panels.toSorted((a, b) => boxArea(b.box) - boxArea(a.box))[0];
}
