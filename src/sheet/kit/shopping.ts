import type { Cost, Sum } from '../../kit/shopping/cost.ts';
import type { Line } from '../../kit/shopping/line.ts';
import { html, SafeHtml } from '../safe-html.ts';
import { joined, type KitWords } from './words.ts';

/** A part of the shopping list: what is used up, or what is kept. */
export type ShoppingGroup = { readonly heading: string; readonly rows: readonly ShoppingRow[] };

export type ShoppingRow = {
  readonly item: SafeHtml;
  readonly needed: SafeHtml;
  readonly onHand: string;
  readonly buy: SafeHtml;
  readonly price: string;
  readonly cost: string;
};

export function shoppingGroups(lines: readonly Line[], words: KitWords): readonly ShoppingGroup[] {
  const { say } = words.voice;
  const group = (key: string, own: readonly Line[]): ShoppingGroup => ({
    heading: say(key),
    rows: own.map((line) => rowOf(line, words)),
  });
  return [
    group(
      'kit-used-up',
      lines.filter(({ consumed }) => consumed),
    ),
    group(
      'kit-to-have',
      lines.filter(({ consumed }) => !consumed),
    ),
  ].filter(({ rows }) => rows.length > 0);
}

function rowOf(line: Line, words: KitWords): ShoppingRow {
  const { voice, amount, money } = words;
  const { item, sheet, needed, written, share, onHand, price, cost, toGet } = line;
  const sharing = share === undefined ? undefined : voice.say('supply-share', { count: share });
  return {
    item: joined([item, ...(sheet ? [words.size(sheet)] : [])]),
    needed: needed ? joined([amount(needed), ...(sharing ? [sharing] : [])]) : unknownAmount(written, words),
    onHand: onHand ? amount(onHand) : '',
    buy: buyOf(line, words),
    price: price ? money(price) : '',
    cost: toGet?.value.equals(0n) ? '' : cost ? money(cost) : needed ? voice.say('kit-price-unknown') : '',
  };
}

function unknownAmount(written: string | undefined, { voice }: KitWords): SafeHtml {
  const text = voice.say('kit-amount-unknown');
  return written === undefined ? html`${text}` : html`${voice.say('supply-each', { amount: written })}`;
}

/** `2 packs of 25`, `6`, nothing, or why it cannot be said. */
function buyOf(line: Line, { voice, amount }: KitWords): SafeHtml {
  const { toGet, pack, packWritten, buy, gaps } = line;
  if (!toGet) return SafeHtml.empty;
  if (toGet.value.equals(0n)) return html`${voice.say('kit-nothing-to-buy')}`;
  const mismatch = gaps.includes('pack')
    ? voice.say('kit-pack-unlike', { pack: packWritten ?? '' })
    : undefined;
  if (mismatch) return html`${mismatch}`;
  if (buy === undefined) return html`${amount(toGet)}`;
  if (!pack) return html`${amount(toGet)}`;
  const size = packWritten ?? amount(pack);
  return html`${voice.say('kit-packs-of', { packs: voice.count('kit-packs', Number(buy)), pack: size })}`;
}

/** A line of the reckoning. */
export type CostRow = { readonly term: string; readonly value: string; readonly note: string | undefined };

export function costRows({ toBuy, used, perAttendee, price }: Cost, words: KitWords): readonly CostRow[] {
  const { voice, money } = words;
  const row = (key: string, sum: Sum): CostRow => ({
    term: voice.say(key),
    value: money(sum.total),
    note: withoutNote(sum, words),
  });
  const rows = [
    row('kit-cost-buy', toBuy),
    row('kit-cost-used', used),
    row('kit-cost-attendee', { total: perAttendee, without: [] }),
  ];
  if (!price) return rows;
  const term = voice.say('kit-cost-price', { margin: price.margin.toString() });
  return [...rows, { term, value: money(price.each), note: voice.say('kit-cost-margin') }];
}

/** `without Tape, Twine: price or amount unknown`. */
function withoutNote({ without }: Sum, { voice }: KitWords): string | undefined {
  if (without.length === 0) return undefined;
  const items = new Intl.ListFormat(voice.language, { type: 'conjunction' }).format(without);
  return voice.say('kit-without', { items });
}
