import { accentOf } from '../drawing/accent.ts';
import { pageCss } from '../handout/css.ts';
import { type PageInput, pageHtml } from '../handout/render.ts';
import type { Kit, StockPlan } from '../kit/plan.ts';
import type { Currency } from '../kit/report/figures.ts';
import { editionIn } from '../measure/ruler-unit.ts';
import type { Paper } from '../project/model.ts';
import { typographic } from '../words/typographic.ts';
import { voiceOf } from '../words/voice.ts';
import { type KitWords, kitWords } from './words.ts';

/** How a page of the bench is shown: `page` is read on a screen, the papers are printed. */
export type BenchInput = PageInput & { readonly currency: Currency; readonly target: 'page' | Paper };

/** What a kit's pages are made from. */
export type KitInput = BenchInput & { readonly kit: Kit };

/** A page of a kit, and its title for the PDF. */
export type KitPage = { readonly title: string; readonly html: string };

/** How a kit's pages speak: in the unit the project is measured in. */
export function wordsFor({ kit: { project }, labels, currency }: KitInput): KitWords {
  return kitWords(voiceOf(labels), editionIn(project.unit), currency);
}

/** What a page of the bench says of itself; `state` is what stands in the margin of a paper beside the heading. */
type BenchHead = {
  readonly heading: string;
  readonly title: string;
  readonly description: string;
  readonly state?: string | undefined;
  /** The papers that are cut: the first with a color gives the page its own. */
  readonly stocks: readonly StockPlan[];
};

/** One page of a kit. */
export function kitPageOf(
  input: KitInput,
  template: string,
  page: Pick<BenchHead, 'title' | 'description' | 'state'>,
  own: object,
): KitPage {
  const { project, stocks } = input.kit;
  return benchPageOf(input, template, { ...page, heading: project.title.value, stocks }, own);
}

/** One page of the bench. */
export function benchPageOf(input: BenchInput, template: string, page: BenchHead, own: object): KitPage {
  const { site, target, labels } = input;
  const { heading, stocks, state, ...head } = page;
  const voice = voiceOf(labels);
  const { color, tint } = accentOf(stocks.find(({ stock }) => stock.color)?.stock.color?.value);
  const margins = { title: heading, site: site.title, address: undefined, state };
  const css = [
    `:root { --accent: ${color}; --tint: ${tint}; }`,
    ...(target === 'page' ? [] : [pageCss(target, margins, voice)]),
  ];
  const title = typographic(heading, voice.say);
  const model = { target, siteTitle: site.title, title, ...own };
  return { title: page.title, html: pageHtml(input, template, { ...head, css: css.join('\n') }, model) };
}
