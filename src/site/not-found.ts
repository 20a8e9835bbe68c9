import { voiceOf } from '../words/voice.ts';
import { frameOf, renderPage, type SitePages } from './frame.ts';
import { siteAddress } from './place.ts';

/**
 * `404.html`. A host shows it at any address, so nothing in it may be relative: styles are set into it, and it leads
 * home only where the site says where that is.
 */
export function notFoundHtml(pages: SitePages): string {
  const voice = voiceOf(pages.labels);
  const title = voice.say('not-found');
  const home = siteAddress(pages.site);
  const frame = frameOf(pages, { title: `${title} – ${pages.site.title}`, description: title, home });
  return renderPage('404', frame, pages);
}
