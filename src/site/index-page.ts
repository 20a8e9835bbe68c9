import { pictureElement } from '../drawing/figures.ts';
import { type Voice, voiceOf } from '../words/voice.ts';
import { type CardView, cardView } from './card-view.ts';
import { choicesOf } from './choices.ts';
import { frameOf, renderPage, type SitePages } from './frame.ts';
import { previewElements } from './head.ts';
import { type ListedProject, type Listing, listingOf } from './listed.ts';
import { absolute, siteAddress } from './place.ts';
import { hoursOf, whenText } from './when.ts';

/** Addresses of the list's own files, relative to the site's root. */
export type IndexLinks = {
  /** The calendar of all sessions; none where there are none. */
  readonly calendar: string | undefined;
  readonly feed: string;
  readonly linkPicture: string;
};

/**
 * `index.html`: the next session from `today` on, large; the further ones; what was, the latest first; and what has
 * no day. The whole list stands in the page: the script only hides what is not looked for.
 */
export function indexHtml(
  projects: readonly ListedProject[],
  today: string,
  pages: SitePages,
  links: IndexLinks,
): string {
  const { site } = pages;
  const voice = voiceOf(pages.labels);
  const listing = listingOf(projects, today);
  const picture = absolute(site, links.linkPicture);
  const preview = previewElements({
    title: site.title,
    description: voice.say('site-description'),
    siteTitle: site.title,
    language: voice.language,
    kind: 'website',
    address: siteAddress(site),
    picture: picture === undefined ? undefined : { address: picture, alternative: site.title },
  });
  const frame = frameOf(pages, {
    title: site.title,
    description: voice.say('site-description'),
    head: [preview],
  });
  const choices = choicesOf(projects, voice);
  const model = {
    ...frame,
    calendar: links.calendar,
    feed: links.feed,
    empty: projects.length === 0,
    next: listing.next && nextView(listing.next, pages, voice),
    find:
      projects.length > 1
        ? {
            choices,
            found: voice.say('site-found'),
            all: voice.say('site-found-all', { all: projects.length }),
          }
        : undefined,
    lists: listsOf(listing, voice),
  };
  return renderPage('index', model, pages);
}

/** Half of a desk screen's column. */
const NEXT_SIZES = '(min-width: 60rem) 32rem, 92vw';

type NextView = CardView & { readonly calendar: string };

function nextView(project: ListedProject, { site }: SitePages, voice: Voice): NextView {
  const { slug, session = '', picture } = project;
  return {
    ...cardView(project, voice),
    picture: picture && { html: pictureElement(picture, '', { sizes: NEXT_SIZES }), drawn: picture.drawn },
    when: whenText(session, hoursOf(site), voice),
    calendar: `${slug}/${slug}.ics`,
  };
}

type ListView = {
  readonly id: string;
  readonly heading: string;
  readonly cards: readonly (CardView & { readonly repeated: boolean })[];
  /** Nothing in it but what is shown above. */
  readonly hidden: boolean;
};

/** The next session stands in its list too, hidden until somebody looks for it: the list is whole when it is filtered. */
function listsOf({ next, toCome, earlier, undated }: Listing, voice: Voice): readonly ListView[] {
  const list = (id: string, heading: string, projects: readonly ListedProject[]): ListView => ({
    id,
    heading: voice.say(heading),
    cards: projects.map((project) => ({ ...cardView(project, voice), repeated: project === next })),
    hidden: projects.every((project) => project === next),
  });
  const onlyUndated = next === undefined && earlier.length === 0;
  return [
    list('to-come', 'projects-to-come', [...(next ? [next] : []), ...toCome]),
    list('earlier', 'site-earlier', earlier),
    list('undated', onlyUndated ? 'projects-archive' : 'site-undated', undated),
  ].filter(({ cards }) => cards.length > 0);
}
