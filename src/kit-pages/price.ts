import type Fraction from 'fraction.js';
import type { Cost } from '../kit/shopping/cost.ts';
import type { ClassPrice, PricePart, Shares } from '../kit/shopping/price.ts';
import { withoutNote } from './shopping.ts';
import type { KitWords } from './words.ts';

/** A part of the price: for the class, and for each person. All that is not given is one part, and is said. */
type PriceRow = {
  readonly term: string;
  readonly forClass: string;
  readonly forPerson: string;
  readonly note?: string | undefined;
};

const TERMS = {
  materials: 'kit-cost-used',
  wear: 'kit-price-wear',
  room: 'kit-price-room',
  platform: 'kit-price-platform',
} as const;

/** The price of a place, part by part, the margin last; undefined where none is asked for. */
export function priceTable({ price, used }: Cost, words: KitWords): object | undefined {
  if (!price) return undefined;
  const note = withoutNote(used, words);
  const parts = price.parts
    .filter(({ shares }) => shares)
    .map((part): PriceRow => {
      const row = { term: termOf(part, words), ...sharesOf(part.shares, words) };
      return part.kind === 'materials' ? { ...row, note } : row;
    });
  const total = { term: words.voice.say('kit-price'), ...sharesOf(price.price, words) };
  return { parts: [...parts, ...notGiven(price, words), leftRow(price, words)], total };
}

function notGiven({ parts }: ClassPrice, words: KitWords): readonly PriceRow[] {
  const terms = parts.filter(({ shares }) => !shares).map((part) => termOf(part, words));
  return terms.length > 0 ? [{ term: terms.join(' · '), ...sharesOf(undefined, words) }] : [];
}

function termOf({ kind, count }: PricePart, { voice }: KitWords): string {
  if (kind === 'work')
    return count
      ? voice.say('kit-price-hours', { hours: numberIn(voice.language, count) })
      : voice.say('kit-price-work');
  if (kind === 'postage')
    return count ? voice.count('kit-price-parcels', count.valueOf()) : voice.say('kit-price-postage');
  return voice.say(TERMS[kind]);
}

/** Exactly, but for a third of an hour. */
function numberIn(language: string, count: Fraction): string {
  return new Intl.NumberFormat(language, { maximumFractionDigits: 2 }).format(count.valueOf());
}

function leftRow({ margin, left }: ClassPrice, words: KitWords): PriceRow {
  const { say } = words.voice;
  const row = sharesOf(left, words);
  if (!margin) return { ...row, term: say('kit-price-rounding') };
  const term = say('kit-price-margin', { margin: say.figure(margin.toString()) });
  return { ...row, term, note: say('kit-price-margin-note') };
}

function sharesOf(shares: Shares | undefined, { voice, money }: KitWords): Omit<PriceRow, 'term'> {
  const unknown = voice.say('kit-price-not-given');
  if (!shares) return { forClass: unknown, forPerson: '' };
  return { forClass: money(shares.all), forPerson: money(shares.each) };
}
