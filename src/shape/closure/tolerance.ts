import { Length } from '../../measure/length.ts';

/** What paper forgives beside its own thickness: a tenth of a millimeter. */
const GIVE: Length = Length.of(1, 10, 'mm');

/**
 * How far two things that should meet may be apart, for paper of this thickness: two thicknesses, since nets are
 * drawn without thickness and either side may have been allowed for it, and a little give.
 */
export function tolerance(caliper: Length): Length {
  return caliper.times(2).plus(GIVE);
}

/** Whether two lengths that should be equal are, as far as paper shows. */
export function nearlyEqual(a: Length, b: Length, caliper: Length): boolean {
  return !a.minus(b).abs().greaterThan(tolerance(caliper));
}
