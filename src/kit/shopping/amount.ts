import Fraction from 'fraction.js';
import { Length } from '../../measure/length.ts';
import { notation, ratioOf } from '../../measure/notation.ts';
import { supplyUnit } from '../../measure/supply-units.ts';

/**
 * So much of something, exactly: millimeters of it, or a number of things by their name (`''` where none is given).
 */
export type Amount =
  | { readonly kind: 'length'; readonly value: Fraction }
  | { readonly kind: 'count'; readonly value: Fraction; readonly noun: string };

const AMOUNT: RegExp = new RegExp(
  String.raw`^(?:pack\s+of\s+)?(?:${notation.number})\s*(?<rest>[^\d\s][^\d]*)?$`,
  'iu',
);

/** Longer than any amount anybody writes. */
const MOST_CHARACTERS = 60;

/**
 * `24 in`, `10 yd`, `1/2`, `25 sheets`, `pack of 30`. A bare number is a number of things. Undefined when it is no
 * amount, such as `a little`.
 */
export function parseAmount(text: string): Amount | undefined {
  const trimmed = text.trim();
  const match = trimmed.length <= MOST_CHARACTERS ? AMOUNT.exec(trimmed) : null;
  if (!match?.groups) return undefined;
  const { numerator, denominator } = ratioOf(match.groups);
  if (denominator === 0n) return undefined;
  const rest = match.groups.rest?.trim() ?? '';
  const length = supplyUnit(rest);
  if (!length) return { kind: 'count', value: new Fraction(numerator, denominator), noun: singular(rest) };
  const whole = length.times(numerator, denominator).in('mm');
  return { kind: 'length', value: new Fraction(whole.numerator, whole.denominator) };
}

/** A number of things without a name. */
export function countOf(count: number | bigint): Amount {
  return { kind: 'count', value: new Fraction(BigInt(count), 1n), noun: '' };
}

/** Whether one can be taken from the other: two lengths, or numbers of the same things. */
export function areAlike(one: Amount, other: Amount): boolean {
  if (one.kind !== 'count' || other.kind !== 'count') return one.kind === other.kind;
  return one.noun === other.noun || one.noun === '' || other.noun === '';
}

export function lengthOf({ value }: Extract<Amount, { kind: 'length' }>): Length {
  return Length.of(value.s * value.n, value.d, 'mm');
}

/** `dots` and `dot` are the same thing. */
function singular(noun: string): string {
  return noun.toLowerCase().replace(/s$/u, '');
}
