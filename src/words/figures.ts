import type { Length } from '../measure/length.ts';
import { printMillimeters, roundedSign, rulerInches } from '../measure/print.ts';
import { type EditionName, UNIT_OF } from '../measure/ruler-unit.ts';
import type { Say } from './labels.ts';

/** A length as a ruler shows it, cut up so that a true fraction can be set: `−`, `2`, `11/16`. */
type RulerFigure = {
  /** `≈` where it is only near the length, `−` below zero. */
  readonly sign: string;
  /** Nothing where the fraction is all there is. */
  readonly whole: string;
  readonly fraction?: string;
};

export function figureOf(length: Length, edition: EditionName, say: Say): RulerFigure {
  const rounded = roundedSign(length, UNIT_OF[edition]);
  if (edition === 'metric') return { sign: rounded, whole: say.figure(printMillimeters(length)) };
  const { negative, whole, numerator, denominator } = rulerInches(length);
  const sign = `${rounded}${negative ? '−' : ''}`;
  if (numerator === 0n) return { sign, whole: String(whole) };
  return { sign, whole: whole === 0n ? '' : String(whole), fraction: `${numerator}/${denominator}` };
}

/** Whether a length is said as one is. A fraction of an inch is singular in every language; all else by its own rule. */
export function isOne(length: Length, edition: EditionName, say: Say): boolean {
  if (edition === 'metric') return say.isOne(Number(printMillimeters(length)));
  const { whole, numerator } = rulerInches(length);
  return whole === 0n || (whole === 1n && numerator === 0n) || say.isOne(length.mm / 25.4);
}
