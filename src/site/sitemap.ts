import type { Site } from '../project/model.ts';
import { html, SafeHtml, xmlDocument } from '../words/safe-html.ts';
import type { ListedProject } from './listed.ts';
import { absolute } from './place.ts';
import { shelvesOf } from './shelves.ts';

/** `sitemap.xml` (sitemaps.org, protocol 0.9); undefined where the site has no address: it can hold no other. */
export function sitemapXml(projects: readonly ListedProject[], site: Site): string | undefined {
  const root = absolute(site, '');
  if (root === undefined) return undefined;
  const pages = projects.map(({ slug, revisions }) => ({
    address: absolute(site, `${slug}/`) ?? '',
    changed: revisions.at(-1)?.date,
  }));
  const shelves = shelvesOf(projects).map(({ path }) => ({
    address: absolute(site, path) ?? '',
    changed: undefined,
  }));
  const urls = [{ address: root, changed: undefined }, ...shelves, ...pages].map(({ address, changed }) => {
    const modified = changed === undefined ? '' : html`<lastmod>${changed}</lastmod>\n`;
    return html`<url>\n<loc>${address}</loc>\n${modified}</url>\n`;
  });
  return xmlDocument(
    html`<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">\n${SafeHtml.join(urls)}</urlset>`,
  );
}
