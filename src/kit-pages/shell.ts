import { accentOf } from '../drawing/accent.ts';
import { pageCss } from '../handout/css.ts';
import { type PageInput, pageHtml } from '../handout/render.ts';
import type { Kit } from '../kit/plan.ts';
import type { Currency } from '../kit/report/figures.ts';
import { editionIn } from '../measure/ruler-unit.ts';
import type { Paper } from '../project/model.ts';
import { typographic } from '../words/typographic.ts';
import { voiceOf } from '../words/voice.ts';
import { type KitWords, kitWords } from './words.ts';

/** What a kit's pages are made from. `page` is read on a screen, the papers are printed. */
export type KitInput = PageInput & {
  readonly kit: Kit;
  readonly currency: Currency;
  readonly target: 'page' | Paper;
};

/** A page of a kit, and its title for the PDF. */
export type KitPage = { readonly title: string; readonly html: string };

/** How a kit's pages speak: in the unit the project is measured in. */
export function wordsFor({ kit: { project }, labels, currency }: KitInput): KitWords {
  return kitWords(voiceOf(labels), editionIn(project.unit), currency);
}

/** One page of a kit. @param page `state` is what stands in the margin of a paper beside the title. */
export function kitPageOf(
  input: KitInput,
  template: string,
  page: { readonly title: string; readonly description: string; readonly state?: string | undefined },
  own: object,
): KitPage {
  const { kit, site, target, labels } = input;
  const { project, stocks } = kit;
  const voice = voiceOf(labels);
  const { color, tint } = accentOf(stocks.find(({ stock }) => stock.color)?.stock.color?.value);
  const margins = { title: project.title.value, site: site.title, address: undefined, state: page.state };
  const css = [
    `:root { --accent: ${color}; --tint: ${tint}; }`,
    ...(target === 'page' ? [] : [pageCss(target, margins, voice)]),
  ];
  const title = typographic(project.title.value, voice.say);
  const model = { target, siteTitle: site.title, title, ...own };
  return { title: page.title, html: pageHtml(input, template, { ...page, css: css.join('\n') }, model) };
}
