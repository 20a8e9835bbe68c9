import type { Cost, Sum } from '../kit/shopping/cost.ts';
import type { ShoppingLine } from '../kit/shopping/line.ts';
import { html, SafeHtml } from '../words/safe-html.ts';
import { typographic } from '../words/typographic.ts';
import { joined, type KitWords } from './words.ts';

/** A part of the shopping list: what is used up, or what is kept. */
type ShoppingGroup = { readonly heading: string; readonly rows: readonly ShoppingRow[] };

type ShoppingRow = {
  readonly item: SafeHtml;
  readonly needed: SafeHtml;
  readonly onHand: string;
  readonly buy: SafeHtml;
  readonly price: string;
  readonly cost: string;
};

export function shoppingGroups(lines: readonly ShoppingLine[], words: KitWords): readonly ShoppingGroup[] {
  const { say } = words.voice;
  const groups = [true, false].map((isUsedUp) => ({
    heading: say(isUsedUp ? 'kit-used-up' : 'kit-to-have'),
    rows: lines
      .filter(({ consumed }) => consumed === isUsedUp)
      .map((line) => rowOf(line, words.measuredIn(line.unit))),
  }));
  return groups.filter(({ rows }) => rows.length > 0);
}

function rowOf(line: ShoppingLine, words: KitWords): ShoppingRow {
  const { voice, amount, money } = words;
  const { item, from, sheet, needed, written, share, onHand, onHandWritten, price } = line;
  const sharing = share === undefined ? undefined : voice.say('supply-share', { count: share });
  return {
    item: joined([
      ...[item, ...(from === undefined ? [] : [from])].map((text) => typographic(text, voice.say)),
      ...(sheet ? [words.size(sheet)] : []),
    ]),
    needed: needed ? joined([amount(needed), ...(sharing ? [sharing] : [])]) : unknownAmount(written, words),
    onHand: onHandWritten ?? (onHand ? amount(onHand) : ''),
    buy: buyOf(line, words),
    price: price ? money(price) : '',
    cost: costOf(line, words),
  };
}

/** Never zero for what is not known. */
function costOf({ toGet, cost, price }: ShoppingLine, { voice, money }: KitWords): string {
  if (toGet?.value.equals(0n)) return '';
  if (cost) return money(cost);
  return voice.say(price ? 'kit-cost-unknown' : 'kit-price-unknown');
}

function unknownAmount(written: string | undefined, { voice }: KitWords): SafeHtml {
  const text =
    written === undefined ? voice.say('kit-amount-unknown') : voice.say('supply-each', { amount: written });
  return html`${text}`;
}

/** `2 packs of 25`, `6`, nothing, or why it cannot be said. */
function buyOf(line: ShoppingLine, { voice, amount }: KitWords): SafeHtml {
  const { toGet, pack, packWritten, buy, gaps } = line;
  if (!toGet) return SafeHtml.empty;
  if (toGet.value.equals(0n)) return html`${voice.say('kit-nothing-to-buy')}`;
  if (gaps.includes('pack')) return html`${voice.say('kit-pack-unlike', { pack: packWritten ?? '' })}`;
  if (buy === undefined || !pack) return html`${amount(toGet)}`;
  const size = packWritten === undefined ? amount(pack) : typographic(packWritten, voice.say);
  return html`${voice.say('kit-packs-of', { packs: voice.count('kit-packs', Number(buy)), pack: size })}`;
}

/** A line of the reckoning. */
type CostRow = { readonly term: string; readonly value: string; readonly note: string | undefined };

export function costRows(
  { toBuy, used, perAttendee }: Cost,
  words: KitWords,
  each: 'kit-cost-each' | 'season-cost-each' = 'kit-cost-each',
): readonly CostRow[] {
  const { voice, money } = words;
  const unknown = voice.say('kit-cost-unknown');
  const bought = toBuy.total ? money(toBuy.total) : unknown;
  const usedUp =
    used.total && perAttendee
      ? voice.say(each, { total: money(used.total), each: money(perAttendee) })
      : unknown;
  return [
    { term: voice.say('kit-cost-buy'), value: bought, note: withoutNote(toBuy, words) },
    { term: voice.say('kit-cost-used'), value: usedUp, note: withoutNote(used, words) },
  ];
}

/** More names would be a paragraph; the list above says of each that its price is unknown. */
const MOST_NAMED = 6;

/** `without Tape and Twine: amount or price unknown`. */
export function withoutNote({ without }: Sum, { voice }: KitWords): string | undefined {
  if (without.length === 0) return undefined;
  if (without.length > MOST_NAMED) return voice.count('kit-without-listed', without.length);
  const items = new Intl.ListFormat(voice.language, { type: 'conjunction' }).format(without);
  return voice.say('kit-without', { items });
}
