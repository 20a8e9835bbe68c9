import { calendarOf } from '../../site/calendar.ts';
import { notFoundHtml } from '../../site/frame.ts';
import { indexHtml } from '../../site/index-page.ts';
import { pagesAnywhere, pagesAt, searchAsset } from '../assets.ts';
import { cardOf } from '../card.ts';
import { siteLinkPicture } from '../link-picture.ts';
import type { Output, SiteMaterial } from '../output.ts';

/** `site/index.html` and `site/404.html`. */
export const sitePages: Output = {
  card: cardOf,
  ofSite: (material) => [
    { path: 'site/index.html', produce: () => listHtml(material) },
    { path: 'site/404.html', produce: () => notFoundHtml(pagesAnywhere(material)) },
  ],
};

function listHtml(material: SiteMaterial): string {
  const { site, labels, cards, today } = material;
  return indexHtml(cards, today, pagesAt('', material, 'list'), {
    calendar: calendarOf(cards, site, labels) === undefined ? undefined : 'sessions.ics',
    feed: 'feed.xml',
    search: `assets/${searchAsset(cards, material).name}`,
    linkPicture: siteLinkPicture(site).name,
  });
}
