import { html, SafeHtml } from '../words/safe-html.ts';

/** What a page says of itself to programs that show a link to it (Open Graph, ogp.me). */
type LinkPreview = {
  readonly title: string;
  readonly description: string;
  readonly siteTitle: string;
  readonly language: string;
  readonly kind: 'website' | 'article';
  /** Absolute: whoever shows a link has only the address it was given. Without one, nothing is said of it. */
  readonly address: string | undefined;
  readonly picture: { readonly address: string; readonly alternative: string } | undefined;
};

/** The size of a preview picture in pixels, 1.91 to 1 as the services that show it ask for. */
export const LINK_PICTURE_SIZE: { readonly width: 1200; readonly height: 630 } = { width: 1200, height: 630 };

/** Names of the site's icons, relative to its root. */
export type Icons = { readonly svg: string; readonly png: string };

/** `<meta property="og:…">` and the page's lasting address. */
export function previewElements(preview: LinkPreview): SafeHtml {
  const { title, description, siteTitle, language, kind, address, picture } = preview;
  const meta = (property: string, content: string | number): SafeHtml =>
    html`<meta property="og:${property}" content="${content}">`;
  return SafeHtml.join(
    [
      meta('title', title),
      meta('description', description),
      meta('site_name', siteTitle),
      meta('type', kind),
      meta('locale', language.replace('-', '_')),
      ...(address === undefined
        ? []
        : [meta('url', address), html`<link rel="canonical" href="${address}">`]),
      ...(picture === undefined
        ? []
        : [
            meta('image', picture.address),
            meta('image:width', LINK_PICTURE_SIZE.width),
            meta('image:height', LINK_PICTURE_SIZE.height),
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
