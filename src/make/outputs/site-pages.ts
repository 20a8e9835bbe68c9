import { indexHtml, notFoundHtml, type SitePages } from '../../site/index-page.ts';
import { siteStyles } from '../assets.ts';
import type { Output, SiteMaterial } from '../output-kind.ts';

/** `site/index.html` and `site/404.html`. */
export const sitePages: Output = {
  id: 'site-pages',
  ofSite: (material) => [
    { path: 'site/index.html', produce: () => indexHtml(material.cards, material.today, pagesOf(material)) },
    { path: 'site/404.html', produce: () => notFoundHtml(pagesOf(material)) },
  ],
};

function pagesOf({ site, labels, files, renderer }: SiteMaterial): SitePages {
  const hrefs = [`assets/${siteStyles(files).name}`];
  return { site, labels, renderer, styles: { kind: 'linked', hrefs } };
}
