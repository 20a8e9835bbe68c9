import { accentOf } from '../drawing/accent.ts';
import { pageCss, type Styles, styleElements } from '../handout/css.ts';
import type { Kit } from '../kit/plan.ts';
import type { Currency } from '../kit/report/figures.ts';
import type { Site } from '../project/model.ts';
import type { Labels } from '../words/labels.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import { typographic } from '../words/typographic.ts';
import { voiceOf } from '../words/voice.ts';
import { type KitWords, kitWords } from './words.ts';

/** What a kit's pages are made from. `page` is read on a screen, the papers are printed. */
export type KitInput = {
  readonly kit: Kit;
  readonly site: Site;
  readonly currency: Currency;
  readonly labels: Labels;
  readonly target: 'page' | 'letter' | 'a4';
  readonly styles: Styles;
};

/** What every page of a kit has. */
export type KitShell = {
  readonly language: string;
  readonly target: string;
  readonly documentTitle: string;
  readonly description: string;
  readonly styles: SafeHtml;
  readonly scripts: readonly string[];
  readonly siteTitle: string;
  readonly title: string;
};

/** @param state what stands in the margin of a paper beside the title. */
export function kitShell(
  { kit: { project, stocks }, site, labels, target, styles }: KitInput,
  { state, ...told }: { documentTitle: string; description: string; state: string | undefined },
): KitShell {
  const voice = voiceOf(labels);
  const { color, tint } = accentOf(stocks.find(({ stock }) => stock.color)?.stock.color?.value);
  const margins = { title: project.title.value, site: site.title, address: undefined, state };
  const css = [
    `:root { --accent: ${color}; --tint: ${tint}; }`,
    ...(target === 'page' ? [] : [pageCss(target, margins, voice)]),
  ];
  return {
    ...told,
    language: voice.language,
    target,
    styles: styleElements(styles, css.join('\n')),
    scripts: [],
    siteTitle: site.title,
    title: typographic(project.title.value, voice.language),
  };
}

/** In the unit the project is measured in. */
export function wordsFor({ kit: { project }, labels, currency }: KitInput): KitWords {
  return kitWords(voiceOf(labels), project.unit === 'in' ? 'inch' : 'metric', currency);
}
