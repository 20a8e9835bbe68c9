import { CUTS_A_SETTING, countCuts, countSettings } from '../layout/effort.ts';
import { stripsOf } from '../layout/strips.ts';
import type { CuttingProblem, Pattern, Use } from './problem.ts';

/** What a pattern costs the person at the trimmer, in settings of the stop: once, and for each sheet. */
export type Effort = { readonly once: number; readonly perSheet: number };

/** To find one's way in another layout; common practice, no source. */
const LAYOUT = 4;

export function effortOf({ tree, sheet }: Pattern, { sheets, longest }: CuttingProblem): Effort {
  const size = sheets[sheet] ?? { width: 0, height: 0 };
  const part = stripsOf(tree, size, longest);
  return { once: LAYOUT + countSettings(part), perSheet: countCuts(part) / CUTS_A_SETTING };
}

export function totalEffort(uses: readonly Use[], problem: CuttingProblem): number {
  return uses.reduce((total, { pattern, count }) => {
    const { once, perSheet } = effortOf(pattern, problem);
    return total + once + perSheet * count;
  }, 0);
}
