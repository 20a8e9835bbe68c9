import type { Supply, SupplyKind } from '../project/model.ts';
import { html, type SafeHtml } from '../words/safe-html.ts';
import { measuredHtml } from './measured-text.ts';
import { stocksUsed } from './papers.ts';
import type { Setting } from './setting.ts';

export type SupplyGroup = { readonly heading: string; readonly items: readonly SupplyItem[] };

export type SupplyItem = {
  /** Unique on the page, for a tick that is remembered. */
  readonly id: string;
  readonly item: SafeHtml;
  readonly name: string;
  readonly instead: SafeHtml | undefined;
  readonly amount: SafeHtml | undefined;
  readonly link: SupplyLink | undefined;
};

/** A link as it is read on paper too: the address itself. Its disclosure stands beside it. */
export type SupplyLink = { readonly href: string; readonly address: string; readonly paid: boolean };

/** In the order they are laid on the table. */
const KINDS: readonly SupplyKind[] = [
  'tool',
  'punch',
  'die',
  'stamp',
  'ink',
  'adhesive',
  'embellishment',
  'filling',
  'other',
];

/** Paper first, then the supplies by kind. */
export function supplyGroups(setting: Setting): readonly SupplyGroup[] {
  const { project, voice } = setting;
  const papers = stocksUsed(setting).map((stock, index) => ({
    ...NOTHING_BESIDES,
    id: `paper-${index + 1}`,
    item: html`${stock.name}`,
    name: stock.name,
  }));
  const kinds = KINDS.map((kind) => ({
    heading: voice.say(`kind-${kind}`),
    items: project.supplies.flatMap((supply, index) =>
      supply.kind.value === kind ? [itemOf(setting, supply, index + 1)] : [],
    ),
  }));
  return [{ heading: voice.say('kind-stock'), items: papers }, ...kinds].filter(
    ({ items }) => items.length > 0,
  );
}

const NOTHING_BESIDES = { instead: undefined, amount: undefined, link: undefined } as const;

function itemOf(setting: Setting, supply: Supply, number: number): SupplyItem {
  const { voice } = setting;
  const { item, instead, each, share, link } = supply;
  const amount = each
    ? voice.phrase('supply-each', { amount: measuredHtml(each.value, setting) })
    : share && voice.phrase('supply-share', { count: share.value });
  return {
    id: `supply-${number}`,
    item: measuredHtml(item.value, setting),
    name: item.value,
    instead: instead && voice.phrase('supply-instead', { instead: measuredHtml(instead.value, setting) }),
    amount,
    link: link && { href: link.value, address: readable(link.value), paid: supply.paid },
  };
}

/** An address as it is typed: without `https://` and a closing slash. */
export function readable(address: string): string {
  return address.replace(/^https?:\/\//u, '').replace(/\/$/u, '');
}
