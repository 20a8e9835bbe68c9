import { type PageHead, type PageInput, pageHtml } from '../handout/render.ts';
import type { Site } from '../project/model.ts';
import type { Labels } from '../words/labels.ts';
import { html, SafeHtml } from '../words/safe-html.ts';
import { voiceOf } from '../words/voice.ts';
import { FAVICON } from './favicon.ts';
import { PICTURE_SIZES } from './picture-formats.ts';
import { absolute, siteAddress } from './place.ts';

/** What the site's own pages are made with. Addresses lead from the page that is made. */
export type SitePages = PageInput & {
  readonly scripts: readonly string[];
  /** From the page to the site's root: `''` or `../../`. */
  readonly root: string;
  /** None for a page that is shown at any address. */
  readonly icons: Icons | undefined;
};

/** A page of the site: what each has, and what `own` gives to its template. */
export function sitePageHtml(
  template: string,
  pages: SitePages,
  { home, head = [], ...page }: PageHead & { readonly home?: string; readonly head?: readonly SafeHtml[] },
  own: object,
): string {
  const { site, scripts, root, icons } = pages;
  const elements = [...(icons ? [siteElements(root, icons, site.title)] : []), ...head];
  const frame = { siteTitle: site.title, home, head: SafeHtml.join(elements, '\n') };
  return pageHtml(pages, template, { ...page, scripts }, { ...frame, ...own });
}

/**
 * `404.html`. A host shows it at any address, so nothing in it may be relative: styles are set into it, and it leads
 * home only where the site says where that is.
 */
export function notFoundHtml(pages: SitePages): string {
  const description = voiceOf(pages.labels).say('not-found');
  const home = siteAddress(pages.site);
  const title = `${description} – ${pages.site.title}`;
  const icon = html`<link rel="icon" type="image/svg+xml" href="data:image/svg+xml,${encodeURIComponent(FAVICON)}">`;
  const page = { title, description, head: [icon], ...(home !== undefined && { home }) };
  return sitePageHtml('404', pages, page, {});
}

/** What a page says of itself to programs that show a link to it (Open Graph, ogp.me). */
type LinkPreview = {
  readonly title: string;
  readonly description: string;
  readonly kind: 'website' | 'article';
  /** From the site's root, as the picture's. */
  readonly path: string;
  readonly picture: { readonly path: string; readonly alternative: string };
};

/** Names of the site's icons, relative to its root. */
export type Icons = { readonly svg: string; readonly png: string };

/**
 * `<meta property="og:…">` and the page's lasting address. Whoever shows a link has only the address it was given, so
 * that nothing is said of addresses where the site has none.
 */
export function previewElements(
  site: Pick<Site, 'title' | 'url'>,
  { language }: Pick<Labels, 'language'>,
  { title, description, kind, path, picture }: LinkPreview,
): SafeHtml {
  const [address, image] = [absolute(site, path), absolute(site, picture.path)];
  const meta = (property: string, content: string | number): SafeHtml =>
    html`<meta property="og:${property}" content="${content}">`;
  return SafeHtml.join(
    [
      meta('title', title),
      meta('description', description),
      meta('site_name', site.title),
      meta('type', kind),
      meta('locale', language.replace('-', '_')),
      ...(address === undefined || image === undefined
        ? []
        : [
            meta('url', address),
            html`<link rel="canonical" href="${address}">`,
            meta('image', image),
            meta('image:width', PICTURE_SIZES.wide.width),
            meta('image:height', PICTURE_SIZES.wide.height),
            meta('image:alt', picture.alternative),
          ]),
    ],
    '\n',
  );
}

/** Icons and feed. `root` leads from the page to the site's root: `''`, `../`. */
export function siteElements(root: string, icons: Icons, feedTitle: string): SafeHtml {
  return SafeHtml.join(
    [
      html`<link rel="icon" type="image/svg+xml" href="${root}${icons.svg}">`,
      html`<link rel="icon" type="image/png" sizes="any" href="${root}${icons.png}">`,
      html`<link rel="apple-touch-icon" href="${root}${icons.png}">`,
      html`<link rel="alternate" type="application/atom+xml" title="${feedTitle}" href="${root}feed.xml">`,
    ],
    '\n',
  );
}
