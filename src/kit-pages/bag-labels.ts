import { accentOf } from '../drawing/accent.ts';
import { pageCss, type Styles, styleElements } from '../handout/css.ts';
import type { Renderer } from '../handout/render.ts';
import type { Kit } from '../kit/kit.ts';
import type { Currency } from '../kit/report/json.ts';
import type { Site } from '../project/model.ts';
import type { Labels } from '../words/labels.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import { typographic } from '../words/typographic.ts';
import { voiceOf } from '../words/voice.ts';
import { pieceName } from './kinds.ts';
import { type KitWords, kitWords } from './words.ts';

export type BagLabelsInput = {
  readonly kit: Kit;
  readonly site: Site;
  readonly currency: Currency;
  readonly labels: Labels;
  readonly target: 'letter' | 'a4';
  readonly styles: Styles;
};

/** A page of labels to be cut apart, one for each bag. */
export type BagLabels = {
  readonly language: string;
  readonly target: string;
  readonly documentTitle: string;
  readonly description: string;
  readonly styles: SafeHtml;
  readonly scripts: readonly string[];
  readonly title: string;
  readonly siteTitle: string;
  readonly day: string | undefined;
  /** What is in every bag. */
  readonly contents: readonly string[];
  readonly bags: readonly { readonly number: string; readonly isSpare: boolean }[];
};

export function bagLabels({ kit, site, currency, labels, target, styles }: BagLabelsInput): BagLabels {
  const { project, attendees, spares, stocks } = kit;
  const voice = voiceOf(labels);
  const words = kitWords(voice, project.unit === 'in' ? 'inch' : 'metric', currency);
  const { color, tint } = accentOf(stocks.find(({ stock }) => stock.color)?.stock.color?.value);
  const margins = { title: project.title.value, site: site.title, address: undefined, state: undefined };
  return {
    language: voice.language,
    target,
    documentTitle: bagLabelsTitle(kit, labels),
    description: voice.say('kit-labels-description'),
    styles: styleElements(
      styles,
      `:root { --accent: ${color}; --tint: ${tint}; }\n${pageCss(target, margins, voice)}`,
    ),
    scripts: [],
    title: typographic(project.title.value, voice.language),
    siteTitle: site.title,
    day: project.session && voice.day(project.session.value),
    contents: contentsOf(kit, words),
    bags: Array.from({ length: attendees + spares }, (_, index) => ({
      number: voice.say('kit-bag', { number: index + 1, count: attendees + spares }),
      isSpare: index >= attendees,
    })),
  };
}

export function bagLabelsTitle({ project }: Kit, labels: Labels): string {
  return voiceOf(labels).say('kit-labels-title', { title: project.title.value });
}

export function renderBagLabels(page: BagLabels, renderer: Renderer, labels: Labels): string {
  return renderer.render('kit-labels', page, voiceOf(labels).say);
}

/** Pieces by stock, then what else goes into the bag: what is used up and measured out. */
function contentsOf({ stocks, shopping }: Kit, { voice, amount }: KitWords): readonly string[] {
  const pieces = stocks.flatMap(({ kinds }) =>
    kinds.flatMap((kind) =>
      kind.pieces.map(({ name, perKit }) =>
        voice.say('kit-bag-item', { amount: perKit, item: pieceName(name, voice) }),
      ),
    ),
  );
  const supplies = shopping.flatMap(({ kind, item, each }) =>
    each && kind !== 'stock' ? [voice.say('kit-bag-supply', { amount: amount(each), item })] : [],
  );
  return [...pieces, ...supplies];
}
