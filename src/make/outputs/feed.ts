import { feedXml } from '../../site/feed.ts';
import type { Output } from '../output.ts';

/** `site/feed.xml`: what was published, as an Atom feed. */
export const feed: Output = {
  ofSite: ({ cards, site, labels }) => [
    { path: 'site/feed.xml', produce: () => feedXml(cards, site, labels) },
  ],
};
