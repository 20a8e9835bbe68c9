import Fraction from 'fraction.js';
import { notation, ratioOf } from '../../measure/notation.ts';
import { made, mapOf, type Value } from '../grammar/grammar.ts';
import { optional } from '../grammar/keys.ts';
import { asMatch, asMoney } from '../grammar/values.ts';
import { leavesSomething, type Pricing } from '../pricing.ts';
import type { At } from '../source.ts';
import type { Money } from '../stock.ts';

/** Longer than any class, its preparation included. */
const MOST_HOURS = 100;

const asHours: Value<Fraction> = made(
  asMatch(
    'hours, such as 3 1/2',
    new RegExp(String.raw`^(?:${notation.number})\s*(?:h|hours?)?$`, 'u'),
    ({ groups = {} }) => {
      const { numerator, denominator } = ratioOf(groups);
      const hours = denominator === 0n ? undefined : new Fraction(numerator, denominator);
      return hours && hours.compare(0n) > 0 && hours.compare(MOST_HOURS) <= 0 ? hours : undefined;
    },
  ),
  ({ value }) => value,
);

const asPercent: Value<At<Fraction>> = asMatch(
  'percent from 0 to under 100, such as 20 %',
  /^(\d{1,2})(?:[.,](\d{1,4}))?\s*%?$/u,
  ([, whole = '', part = '']) => new Fraction(BigInt(whole + part), 10n ** BigInt(part.length)),
);

const asPrice: Value<Money> = made(asMoney, ({ value }) => value);

const PRICING = mapOf('what a class costs you, such as { rate: 24, hours: 3, room: 40 }', {
  rate: optional(asPrice, 'What an hour of your work is worth.'),
  hours: optional(
    asHours,
    'Your hours for a class, preparation included; `minutes:` of the sheet, by default.',
  ),
  'tool wear': optional(asPrice, 'What blades, mats and other tools lose in a class, for each person.'),
  room: optional(asPrice, 'What the room costs for a class.'),
  platform: optional(asPrice, 'What the booking platform takes for each place.'),
  'platform share': optional(asPercent, 'The part of the price that it takes, besides that or instead.'),
  postage: optional(asPrice, 'What a parcel costs to send, wrapping included.'),
  margin: optional(asPercent, 'The part of the price that is left when everything is paid.'),
});

export const asPricing: Value<Pricing> = made(PRICING, (pricing, { reader: { report } }) => {
  const { margin, platformShare, ...others } = pricing;
  const shares = {
    ...(platformShare && { platformShare: platformShare.value }),
    ...(margin && { margin: margin.value }),
  };
  if (!margin || leavesSomething(shares)) return { ...others, ...shares };
  const actual = `${margin.value} %`;
  const expected = `less: with what the platform takes, nothing of the price is left to pay with`;
  report({ rule: 'unexpected-value', at: margin.at, facts: { key: 'margin', expected, actual } });
  return others;
});
