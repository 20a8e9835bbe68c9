import { type Twin, twins } from '../edition/editions.ts';
import { Length } from '../measure/length.ts';
import { rulerMark } from '../measure/round.ts';
import { type EditionName, UNIT_OF } from '../measure/ruler-unit.ts';
import type { Size } from '../measure/size.ts';
import type { Project } from '../project/model.ts';
import { paperNameOf, sheetsSold } from '../project/paper-sizes.ts';
import type { At } from '../project/source.ts';
import type { Stock } from '../project/stock.ts';
import type { Supply, SupplyKind } from '../project/supply.ts';
import { grammageOf, stockOf } from '../shape/caliper.ts';
import { html, SafeHtml } from '../words/safe-html.ts';
import { typographic } from '../words/typographic.ts';
import type { Voice } from '../words/voice.ts';
import { measuredHtml } from './measured-text.ts';
import type { Setting } from './setting.ts';

type SupplyGroup = { readonly heading: string; readonly sets: readonly SupplySet[] };

/** What comes from one set or range, named once; what comes from none stands under no name. */
type SupplySet = { readonly name: SafeHtml | undefined; readonly items: readonly SupplyItem[] };

type SupplyItem = SupplyWords & {
  /** Unique on the page, for a tick that is remembered. */
  readonly id: string;
  readonly color: string | undefined;
  readonly link: SupplyLink | undefined;
};

/** A link as it is read on paper too: the address itself. Its disclosure stands beside it. */
type SupplyLink = { readonly href: string; readonly address: string; readonly paid: boolean };

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
  const papers = stocksUsed(project).map(({ name, from }, index) => ({
    from,
    item: { ...NOTHING_BESIDES, id: `paper-${index + 1}`, item: html`${typographic(name, voice.say)}` },
  }));
  const kinds = KINDS.map((kind) => ({
    heading: voice.say(`kind-${kind}`),
    sets: bySet(
      project.supplies.flatMap((supply, index) =>
        supply.kind.value === kind ? [{ from: supply.from, item: itemOf(setting, supply, index + 1) }] : [],
      ),
      setting,
    ),
  }));
  return [{ heading: voice.say('kind-stock'), sets: bySet(papers, setting) }, ...kinds].filter(
    ({ sets }) => sets.length > 0,
  );
}

const NOTHING_BESIDES = {
  use: undefined,
  instead: undefined,
  amount: undefined,
  color: undefined,
  link: undefined,
} as const;

/** What comes from none first, then each set where it is named first. */
function bySet(
  all: readonly { readonly from?: At<string> | undefined; readonly item: SupplyItem }[],
  setting: Setting,
): readonly SupplySet[] {
  const isLoose = all.some(({ from }) => from === undefined);
  const names = new Set([...(isLoose ? [undefined] : []), ...all.map(({ from }) => from?.value)]);
  return [...names].map((name) => ({
    name:
      name === undefined
        ? undefined
        : setting.voice.phrase('supply-from', { set: measuredHtml(name, setting) }),
    items: all.flatMap(({ from, item }) => (from?.value === name ? [item] : [])),
  }));
}

function itemOf(setting: Setting, supply: Supply, number: number): SupplyItem {
  const { share, link, paid, color } = supply;
  const words = supplyWords(setting, supply);
  return {
    ...words,
    id: `supply-${number}`,
    amount: words.amount ?? (share && setting.voice.phrase('supply-share', { count: share.value })),
    color: color?.value,
    link: link && { href: link.value, address: readable(link.value), paid },
  };
}

/** A supply, what it is for, what one attendee uses of it, and what may take its place. */
type SupplyWords = {
  readonly item: SafeHtml;
  /** What it is used for. */
  readonly use: SafeHtml | undefined;
  readonly amount: SafeHtml | undefined;
  readonly instead: SafeHtml | undefined;
};

export function supplyWords(setting: Setting, { item, for: use, each, instead }: Supply): SupplyWords {
  const { voice } = setting;
  return {
    item: measuredHtml(item.value, setting),
    use: use && voice.phrase('supply-for', { use: measuredHtml(use.value, setting) }),
    amount: each && voice.phrase('supply-each', { amount: measuredHtml(each.value, setting) }),
    instead: instead && voice.phrase('supply-instead', { instead: measuredHtml(instead.value, setting) }),
  };
}

/** An address as it is typed: without `https://` and a closing slash. */
export function readable(address: string): string {
  return address.replace(/^https?:\/\//u, '').replace(/\/$/u, '');
}

/** Every stock the pieces take in any variant, in the order the pieces name them; each as it is in the first that takes it. */
export function stocksUsed(project: Project): readonly Stock[] {
  const used = [project, ...project.others].flatMap((variant) =>
    [...variant.pieces.values()].flatMap((piece) => stockOf(piece, variant) ?? []),
  );
  const first = (id: string): Stock | undefined => used.find((stock) => stock.id.value === id);
  return used.filter((stock, index) => first(stock.id.value) === stock && used.indexOf(stock) === index);
}

/** The color of the first of a project's papers that has one, `#rrggbb`. */
export function paperColor(project: Project): string | undefined {
  return stocksUsed(project).find(({ color }) => color)?.color?.value;
}

/** `80 lb cover (216 g/m²), sheet 12 × 12 in (305 × 305 mm), keep the print upright`. */
export function stockFacts(setting: Setting, stock: Stock): SafeHtml {
  const { voice } = setting;
  const facts = [
    ...(stock.weight ? [html`${weightText(setting, stock)}`] : []),
    ...sheetSizes(setting, stock),
    ...(stock.print?.value === 'upright' ? [html`${voice.say('print-upright')}`] : []),
  ];
  return SafeHtml.join(facts, ', ');
}

/** A basis weight means nothing where papers are sold by the square meter. */
function weightText({ voice, measures }: Setting, { weight }: Stock): string {
  if (!weight) return '';
  const gsm = Math.round(grammageOf(weight.value));
  const isMetric = measures.leading === 'metric' && measures.shown.length === 1;
  if (weight.value.kind === 'grammage' || isMetric) return voice.say('weight-grammage', { gsm });
  const { pounds, grade } = weight.value;
  return voice.say('weight-basis', { pounds, grade: voice.say(`grade-${grade}`), gsm });
}

function sheetSizes(setting: Setting, stock: Stock): SafeHtml[] {
  const { editions, measures, voice } = setting;
  return stock.sheets.flatMap((_, index) => {
    const size = twins(editions, ({ project }) => {
      const own = project.stock.get(stock.id.value);
      const sheet = own && sheetsSold(own, project)[index];
      return sheet && [sheet.size.width.value, sheet.size.height.value];
    });
    if (!size) return [];
    return measures.shown.length > 1 && size.every(isOneLength)
      ? [voice.phrase('stock-sheet', { size: measures.both(size) })]
      : [voice.phrase('stock-papers', { papers: papersOf(setting, size) })];
  });
}

/** What a size of paper is called in the sheet's language, if it has a name. */
export function paperSaid(size: Size, { say }: Voice): string | undefined {
  const name = paperNameOf(size);
  return name && say(`site-paper-${name.replace(' ', '-')}`);
}

const NO_MORE_THAN_ROUNDED: Length = Length.of(1, 1, 'mm');

function isOneLength({ inch, metric }: Twin): boolean {
  return !inch.minus(metric).abs().greaterThan(NO_MORE_THAN_ROUNDED);
}

/** Each edition's own paper: `Letter (8½ × 11 in) or A4 (210 × 297 mm)`; by its name alone where the ruler has no such size, and in large type. */
function papersOf({ measures, target, voice }: Setting, size: readonly Twin[]): SafeHtml {
  const names = measures.shown.map((edition) => {
    const [width, height] = size.map((side) => side[edition]);
    return width && height && paperSaid({ width, height }, voice);
  });
  const or = html`<span class="bracket"> ${voice.say('paired-or')} </span>`;
  const ofUnit = (edition: EditionName, words: SafeHtml): SafeHtml =>
    html`<span data-column="${UNIT_OF[edition]}">${words}</span>`;
  if (target === 'large-print' && names.every((name) => name !== undefined)) {
    return SafeHtml.join(
      measures.shown.map((edition, index) => ofUnit(edition, html`${names[index] ?? ''}`)),
      or,
    );
  }
  const papers = measures.shown.map((edition, index) => {
    const name = names[index];
    const figures = measures.alone(size, edition);
    const isOnRuler = size.every((side) => rulerMark(side[edition], UNIT_OF[edition]).equals(side[edition]));
    return ofUnit(edition, !name ? figures : isOnRuler ? html`${name} (${figures})` : html`${name}`);
  });
  return html`<span class="measure">${SafeHtml.join(papers, or)}</span>`;
}
