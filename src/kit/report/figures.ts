import type { Length } from '../../measure/length.ts';
import { printDecimal, printInches } from '../../measure/print.ts';
import type { Money } from '../../project/stock.ts';

/** The currency of all prices, and how many decimals it has. */
export type Currency = { readonly code: string; readonly decimals: number };

/** A length for another program: as a ruler shows it, and in millimeters to a millionth. */
type LengthFigures = { readonly in: string; readonly mm: number };

export function lengthFigures(length: Length): LengthFigures {
  return { in: printInches(length, 'plain'), mm: mmFigure(length) };
}

function mmFigure(length: Length): number {
  return Number(printDecimal(length, 'mm', 6).replace('−', '-'));
}

/** An amount of money as a plain decimal with all its places: `11.25`. */
export function moneyFigure({ minor }: Money, decimals: number): string {
  const digits = (minor < 0n ? -minor : minor).toString().padStart(decimals + 1, '0');
  const sign = minor < 0n ? '-' : '';
  if (decimals === 0) return `${sign}${digits}`;
  return `${sign}${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
}
