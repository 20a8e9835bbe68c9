import type { Renderer } from '../handout/render.ts';
import { type Styles, styleElements } from '../handout/styles.ts';
import type { Site } from '../project/model.ts';
import type { Labels } from '../words/labels.ts';
import { SafeHtml } from '../words/safe-html.ts';
import { type Voice, voiceOf } from '../words/voice.ts';
import { type Icons, siteElements } from './head.ts';

/** What the site's own pages are made with. Addresses lead from the page that is made. */
export type SitePages = {
  readonly site: Site;
  readonly labels: Labels;
  readonly renderer: Renderer;
  readonly styles: Styles;
  readonly scripts: readonly string[];
  /** From the page to the site's root: `''` or `../../`. */
  readonly root: string;
  /** None for a page that is shown at any address. */
  readonly icons: Icons | undefined;
};

/** What every page of the site prints, beside its own. */
export type Frame = {
  readonly language: string;
  readonly documentTitle: string;
  readonly description: string;
  readonly styles: SafeHtml;
  readonly scripts: readonly string[];
  readonly siteTitle: string;
  readonly home: string | undefined;
  readonly head: SafeHtml;
};

export function frameOf(
  pages: SitePages,
  page: {
    readonly title: string;
    readonly description: string;
    readonly home?: string | undefined;
    readonly head?: readonly SafeHtml[];
    readonly css?: string;
  },
): Frame {
  const { site, styles, scripts, labels, root, icons } = pages;
  return {
    language: labels.language,
    documentTitle: page.title,
    description: page.description,
    styles: styleElements(styles, page.css ?? ''),
    scripts,
    siteTitle: site.title,
    home: page.home,
    head: SafeHtml.join(
      [...(icons ? [siteElements(root, icons, site.title)] : []), ...(page.head ?? [])],
      '\n',
    ),
  };
}

export function renderPage(name: string, model: Frame, { renderer, labels }: SitePages): string {
  const voice: Voice = voiceOf(labels);
  return renderer.render(name, model, voice.say);
}
