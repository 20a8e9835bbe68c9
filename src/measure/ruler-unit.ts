import type { Unit } from './length.ts';

/** What a length in a unit is read off: a ruler in inches, or one in millimeters. */
export function rulerUnit(unit: Unit): 'in' | 'mm' {
  return unit === 'in' ? 'in' : 'mm';
}

/** The edition that is in a unit. */
export function editionIn(unit: Unit): 'inch' | 'metric' {
  return unit === 'in' ? 'inch' : 'metric';
}
