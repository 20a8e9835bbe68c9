import { spokenSize } from '../drawing/words.ts';
import { sidesOf } from '../edition/editions.ts';
import { type Currency, moneyFigure } from '../kit/report/figures.ts';
import { type Amount, lengthOf } from '../kit/shopping/amount.ts';
import type { Length, Unit } from '../measure/length.ts';
import { printDecimal, printInches } from '../measure/print.ts';
import { type EditionName, editionIn } from '../measure/ruler-unit.ts';
import type { Size } from '../measure/size.ts';
import type { Money } from '../project/stock.ts';
import { measuresFor } from '../words/measures.ts';
import { html, SafeHtml } from '../words/safe-html.ts';
import type { Voice } from '../words/voice.ts';

/**
 * How a kit speaks: in the unit the demonstrator measures in, alone. The plan is cut by her ruler; numbers of the other
 * edition would belong to pieces of slightly other sizes.
 */
export type KitWords = {
  readonly voice: Voice;
  readonly leading: EditionName;
  readonly length: (length: Length) => SafeHtml;
  readonly size: (size: Size) => SafeHtml;
  /** The same without markup, for a drawing's alternative. */
  readonly spokenSize: (size: Size) => string;
  /** As the language writes it, to the last unit. */
  readonly money: (money: Money) => string;
  readonly amount: (amount: Amount) => string;
  /** The same words for what is measured in some unit: a season has projects in both. */
  readonly measuredIn: (unit: Unit) => KitWords;
};

export function kitWords(voice: Voice, leading: EditionName, currency: Currency): KitWords {
  const { alone } = measuresFor(voice, [leading], false);
  const figures = (lengths: readonly Length[]): SafeHtml =>
    alone(
      lengths.map((length) => ({ inch: length, metric: length })),
      leading,
    );
  const { code, decimals } = currency;
  const prices = new Intl.NumberFormat(voice.language, {
    style: 'currency',
    currency: code,
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  });
  return {
    voice,
    leading,
    length: (length) => figures([length]),
    size: (size) => figures(sidesOf(size)),
    spokenSize: (size) => spokenSize({ inch: size, metric: size }, { shown: [leading], say: voice.say }),
    // Digits go in as text, so that no floating point touches them.
    money: (money) => prices.format(moneyFigure(money, decimals) as Intl.StringNumericLiteral),
    amount: (amount) => amountText(amount, leading, voice),
    measuredIn: (unit) => kitWords(voice, editionIn(unit), currency),
  };
}

/** Every item as text, escaped, with commas between. */
export function joined(items: readonly (string | SafeHtml)[]): SafeHtml {
  return SafeHtml.join(
    items.map((item) => html`${item}`),
    ', ',
  );
}

/** A number of things, or a length as it is bought: yards beside many inches, meters instead of many centimeters. */
function amountText(amount: Amount, leading: EditionName, { say, language }: Voice): string {
  if (amount.kind === 'count') return new Intl.NumberFormat(language).format(amount.value.valueOf());
  const length = lengthOf(amount);
  const [inches, millimeters] = [length.in('in'), length.mm];
  if (leading === 'metric')
    return millimeters < 1000
      ? say('kit-centimeters', { length: say.figure(printDecimal(length, 'cm', 1)) })
      : say('kit-meters', { length: say.figure(printDecimal(length.times(1, 100), 'cm', 2)) });
  const text = say('kit-inches', { length: printInches(length, 'set') });
  const many = inches.numerator > 72n * inches.denominator;
  return many
    ? say('kit-yards', { inches: text, yards: say.figure(printDecimal(length.times(1, 36), 'in', 1)) })
    : text;
}
