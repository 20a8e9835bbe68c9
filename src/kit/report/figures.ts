import type Fraction from 'fraction.js';
import type { Length } from '../../measure/length.ts';
import { printInches } from '../../measure/print.ts';
import { roundRatio } from '../../measure/round.ts';
import type { Money } from '../../project/stock.ts';

/** The currency of all prices, and how many decimals it has. */
export type Currency = { readonly code: string; readonly decimals: number };

/** A length for another program: as a ruler shows it, and in millimeters to a millionth. */
type LengthFigures = { readonly in: string; readonly mm: number };

export function lengthFigures(length: Length): LengthFigures {
  return { in: printInches(length, 'plain'), mm: roundRatio(length.in('mm'), 6) };
}

/** How many of something for another program, to a millionth: a third of a stick each makes no round number. */
export function countFigure({ s, n, d }: Fraction): number {
  return roundRatio({ numerator: s * n, denominator: d }, 6);
}

/** An amount of money as a plain decimal with all its places: `11.25`. */
export function moneyFigure({ minor }: Money, decimals: number): string {
  const digits = (minor < 0n ? -minor : minor).toString().padStart(decimals + 1, '0');
  const sign = minor < 0n ? '-' : '';
  if (decimals === 0) return `${sign}${digits}`;
  return `${sign}${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
}
