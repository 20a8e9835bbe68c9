import { type Styles, styleElements } from '../handout/css.ts';
import type { PageHead, Renderer } from '../handout/render.ts';
import type { Site } from '../project/model.ts';
import type { Labels } from '../words/labels.ts';
import { SafeHtml } from '../words/safe-html.ts';
import { voiceOf } from '../words/voice.ts';
import { type Icons, siteElements } from './head.ts';
import { siteAddress } from './place.ts';

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
type PageFrame = PageHead & {
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
): PageFrame {
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

export function renderPage(name: string, model: PageFrame, { renderer, labels }: SitePages): string {
  return renderer.render(name, model, voiceOf(labels).say);
}

/**
 * `404.html`. A host shows it at any address, so nothing in it may be relative: styles are set into it, and it leads
 * home only where the site says where that is.
 */
export function notFoundHtml(pages: SitePages): string {
  const voice = voiceOf(pages.labels);
  const title = voice.say('not-found');
  const home = siteAddress(pages.site);
  const frame = frameOf(pages, { title: `${title} – ${pages.site.title}`, description: title, home });
  return renderPage('404', frame, pages);
}
