import { Length, type Unit } from '../../measure/length.ts';
import { printNear } from '../../measure/print.ts';
import { roundDown, roundNearest } from '../../measure/round.ts';
import type { Project } from '../../project/model.ts';

/**
 * What a person measures a form with. Everything a form works out by itself (an allowance for the paper's
 * thickness, a half, a default) is rounded to it, so that every number to cut and score lies on a ruler whenever
 * the numbers written do.
 */
export type Ruler = {
  readonly unit: 'in' | 'mm';
  /** The finest mark worth aiming at: 1/16 in, 1 mm, or 0.5 mm for a project that asks for halves. */
  readonly step: Length;
  /** The pitch of a usual score board, which derived measurements keep to where they are free to: 1/8 in or 1 mm. */
  readonly groove: Length;
};

const INCHES: Ruler = { unit: 'in', step: Length.of(1, 16, 'in'), groove: Length.of(1, 8, 'in') };
const MILLIMETERS: Ruler = { unit: 'mm', step: Length.of(1, 1, 'mm'), groove: Length.of(1, 1, 'mm') };

const HALVES: Ruler = { ...MILLIMETERS, step: Length.of(1, 2, 'mm') };

/**
 * @param metric whether millimeters are whole or may be halves; inches don't ask. A score board's grooves are no
 * nearer to one another for it.
 */
export function rulerOf(unit: Unit, metric: Project['metric'] = 'whole'): Ruler {
  if (unit === 'in') return INCHES;
  return metric === 'half' ? HALVES : MILLIMETERS;
}

/** A usual measurement, so many inches; on a metric ruler the nearest mark: 1/2 in is 13 mm there. */
export function customary({ unit, step }: Ruler, numerator: number, denominator: number): Length {
  const inches = Length.of(numerator, denominator, 'in');
  return unit === 'in' ? inches : roundNearest(inches, step);
}

/** As much of a length as lies on a groove, or where it is too short for one, on the finest mark, or all of it. */
export function roundToGroove(ruler: Ruler, length: Length): Length {
  const grooved = roundDown(length, ruler.groove);
  return grooved.sign > 0 ? grooved : roundToMark(ruler, length);
}

/** As much of a length as lies on the finest mark, or all of one too short for that: for what is cut and never scored. */
export function roundToMark({ step }: Ruler, length: Length): Length {
  const marked = roundDown(length, step);
  return marked.sign > 0 ? marked : length;
}

/** A length for a message, as the ruler shows it. */
export function say(ruler: Ruler, length: Length): string {
  return printNear(length, ruler.unit);
}
