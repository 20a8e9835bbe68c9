import type { Site } from '../project/model.ts';
import type { ListedProject } from './listed.ts';
import { absolute } from './place.ts';
import { xml, xmlDocument } from './xml.ts';

/** `sitemap.xml` (sitemaps.org, protocol 0.9); undefined where the site has no address: it can hold no other. */
export function sitemapXml(projects: readonly ListedProject[], site: Site): string | undefined {
  const root = absolute(site, '');
  if (root === undefined) return undefined;
  const urls = projects.map(({ slug, revisions }) => {
    const changed = revisions.at(-1)?.date;
    const modified = changed === undefined ? [] : [xml('lastmod', {}, changed)];
    return xml('url', {}, xml('loc', {}, absolute(site, `${slug}/`) ?? ''), ...modified);
  });
  return xmlDocument(
    xml(
      'urlset',
      { xmlns: 'http://www.sitemaps.org/schemas/sitemap/0.9' },
      xml('url', {}, xml('loc', {}, root)),
      ...urls,
    ),
  );
}
