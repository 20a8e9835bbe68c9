import { calendarOf } from '../../site/calendar.ts';
import type { SitePages } from '../../site/frame.ts';
import { indexHtml } from '../../site/index-page.ts';
import { notFoundHtml } from '../../site/not-found.ts';
import { bareStyles, siteScript, siteStyles } from '../assets.ts';
import { iconNames } from '../icons.ts';
import { siteLinkPicture } from '../link-pictures.ts';
import type { Output, SiteMaterial } from '../output.ts';

/** `site/index.html` and `site/404.html`. */
export const sitePages: Output = {
  id: 'site-pages',
  ofSite: (material) => [
    { path: 'site/index.html', produce: () => listHtml(material) },
    { path: 'site/404.html', produce: () => notFoundHtml(barePages(material)) },
  ],
};

function listHtml(material: SiteMaterial): string {
  const { site, labels, files, renderer, cards, today } = material;
  const pages: SitePages = {
    site,
    labels,
    renderer,
    styles: { kind: 'linked', hrefs: [`assets/${siteStyles(files).name}`] },
    scripts: [`assets/${siteScript(files).name}`],
    root: '',
    icons: iconNames(),
  };
  return indexHtml(cards, today, pages, {
    calendar: calendarOf(cards, site, labels) === undefined ? undefined : 'sessions.ics',
    feed: 'feed.xml',
    linkPicture: siteLinkPicture(site).name,
  });
}

function barePages({ site, labels, files, renderer }: SiteMaterial): SitePages {
  const styles = { kind: 'inline', css: bareStyles(files) } as const;
  return { site, labels, renderer, styles, scripts: [], root: '', icons: undefined };
}
