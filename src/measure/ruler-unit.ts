import type { Unit } from './length.ts';

/** What a length in a unit is read off: a ruler in inches, or one in millimeters. */
export function rulerUnit(unit: Unit): 'in' | 'mm' {
  return unit === 'in' ? 'in' : 'mm';
}

/** The editions of a project, by the rulers they are for. */
export type EditionName = 'inch' | 'metric';

/** Which of them are made. */
export type Units = 'both' | EditionName;

/** The units that metric lengths are written in. */
export type MetricUnit = 'mm' | 'cm';

/** The ruler each is measured with. */
export const UNIT_OF = { inch: 'in', metric: 'mm' } as const;

/** The edition that is in a unit. */
export function editionIn(unit: Unit): EditionName {
  return unit === 'in' ? 'inch' : 'metric';
}
