import { styleElements } from '../handout/css.ts';
import { headOf, type PageInput } from '../handout/render.ts';
import { SafeHtml } from '../words/safe-html.ts';
import { voiceOf } from '../words/voice.ts';
import { type Icons, siteElements } from './head.ts';
import { siteAddress } from './place.ts';

/** What the site's own pages are made with. Addresses lead from the page that is made. */
export type SitePages = PageInput & {
  readonly scripts: readonly string[];
  /** From the page to the site's root: `''` or `../../`. */
  readonly root: string;
  /** None for a page that is shown at any address. */
  readonly icons: Icons | undefined;
};

/** A page of the site: what each has, and what `own` gives to its template. */
export function pageHtml(
  template: string,
  { site, labels, renderer, styles, scripts, root, icons }: SitePages,
  page: {
    readonly title: string;
    readonly description: string;
    readonly home?: string | undefined;
    readonly head?: readonly SafeHtml[];
    readonly css?: string;
  },
  own: object,
): string {
  const { title, description, home, head = [], css = '' } = page;
  const elements = [...(icons ? [siteElements(root, icons, site.title)] : []), ...head];
  const model = {
    ...headOf(labels, styleElements(styles, css), { title, description, scripts }),
    siteTitle: site.title,
    home,
    head: SafeHtml.join(elements, '\n'),
    ...own,
  };
  return renderer.render(template, model, voiceOf(labels).say);
}

/**
 * `404.html`. A host shows it at any address, so nothing in it may be relative: styles are set into it, and it leads
 * home only where the site says where that is.
 */
export function notFoundHtml(pages: SitePages): string {
  const description = voiceOf(pages.labels).say('not-found');
  const home = siteAddress(pages.site);
  return pageHtml('404', pages, { title: `${description} – ${pages.site.title}`, description, home }, {});
}
