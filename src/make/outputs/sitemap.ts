import { sitemapXml } from '../../site/sitemap.ts';
import type { Output } from '../output.ts';

/** `site/sitemap.xml`, where the site has an address. */
export const sitemap: Output = {
  ofSite: ({ cards, site }) => {
    const text = sitemapXml(cards, site);
    return text === undefined ? [] : [{ path: 'site/sitemap.xml', produce: () => text }];
  },
};
