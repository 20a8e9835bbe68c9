import { type CutGrid, gridOf } from './grid.ts';
import type { CuttingProblem } from './problem.ts';

/** Steps along the longer edge of a relaxed sheet; few enough for every position to be there. */
const RELAXED_STEPS = 400;

/** Blanks a little too small on a sheet too large; undefined when a blank is so small that it would vanish. */
export function relaxedGrid({ blanks, sheets, safe }: CuttingProblem, index: number): CutGrid | undefined {
  const { width = 0, height = 0 } = (safe?.sheets ?? sheets)[index] ?? {};
  const step = Math.ceil(Math.max(width, height) / RELAXED_STEPS);
  const smaller = blanks.map(({ turnable }, blank) => {
    const size = (safe?.blanks ?? blanks)[blank] ?? { width: 0, height: 0 };
    return { width: Math.floor(size.width / step), height: Math.floor(size.height / step), turnable };
  });
  if (smaller.some((blank) => blank.width === 0 || blank.height === 0)) return undefined;
  return gridOf(smaller, { width: Math.ceil(width / step), height: Math.ceil(height / step) });
}
