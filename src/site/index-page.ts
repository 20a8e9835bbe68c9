import { pictureElement } from '../drawing/placed-picture.ts';
import type { Site } from '../project/model.ts';
import { typographic } from '../words/typographic.ts';
import { type Voice, voiceOf } from '../words/voice.ts';
import { cardView } from './card-view.ts';
import { choicesOf, sortChoice } from './choices.ts';
import { previewElements, type SitePages, sitePageHtml } from './frame.ts';
import { type ListedProject, type Listing, listingOf } from './listed.ts';
import { meetingFacts, siteMeeting } from './meeting.ts';
import { openDates } from './scheduled.ts';
import { frontOf, shelfLinks } from './shelves.ts';
import { hoursOf, whenText } from './when.ts';

/** Addresses of the list's own files, relative to the site's root. */
type IndexLinks = {
  /** The calendar of all sessions; none where there are none. */
  readonly calendar: string | undefined;
  readonly feed: string;
  /** The script that searches. */
  readonly search: string;
  readonly linkPicture: string;
};

/**
 * `index.html`: the next session from `today` on, large; the further ones; what was, the latest first; and what has
 * no day. A list that is not too long stands whole in the page; a longer one has shelves besides. Scripts only sort it by
 * the reader's day, and show what is looked for.
 */
export function indexHtml(
  projects: readonly ListedProject[],
  today: string,
  pages: SitePages,
  links: IndexLinks,
): string {
  const { site } = pages;
  const voice = voiceOf(pages.labels);
  const listing = frontOf(listingOf(projects, today));
  const { title } = site;
  const description = site.summary?.value ?? voice.say('site-description');
  const meeting = siteMeeting(site);
  const preview = previewElements(site, pages.labels, {
    title,
    description,
    kind: 'website',
    path: '',
    picture: { path: links.linkPicture, alternative: title },
  });
  return sitePageHtml(
    'index',
    pages,
    { title, description, head: [preview] },
    {
      calendar: links.calendar,
      feed: links.feed,
      empty: projects.length === 0,
      about: typographic(description, voice.say),
      meeting: { ...meeting, facts: meetingFacts(meeting, voice), calendar: undefined },
      next: listing.next && nextView(listing.next, pages, voice),
      dates: datesOf(projects, today, site, voice),
      find: projects.length > 1 && {
        search: links.search,
        choices: [...choicesOf(projects, voice), sortChoice(voice)],
        found: voice.say('site-found'),
        all: voice.count('site-found-all', projects.length),
      },
      lists: listsOf(listing, pages, voice),
      shelves: shelfLinks(projects, voice),
    },
  );
}

/** Half of a desk screen's column. */
const NEXT_SIZES = '(min-width: 60rem) 32rem, 92vw';

function nextView(project: ListedProject, pages: SitePages, voice: Voice): object {
  const { picture } = project;
  return {
    ...cardView(project, pages, voice),
    sizes: NEXT_SIZES,
    picture: picture && { html: pictureElement(picture, '', { sizes: NEXT_SIZES }), drawn: picture.drawn },
  };
}

/** So many are shown; further ones take their place as days go by. */
const DATES_SHOWN = 4;
const DATES_WRITTEN = 16;

/** Days that the schedule promises and no project has yet. */
function datesOf(
  projects: readonly ListedProject[],
  today: string,
  site: Site,
  voice: Voice,
): readonly object[] {
  const taken = projects.flatMap(({ session }) => session ?? []).toSorted();
  const dates = site.sessions ? openDates(site.sessions, taken, today, DATES_WRITTEN) : [];
  return dates.map((date, place) => ({
    date,
    when: whenText(date, hoursOf(site), voice),
    hidden: place >= DATES_SHOWN,
  }));
}

/** The next session stands in its list too, hidden until somebody looks for it: the list is whole when it is filtered. */
function listsOf(
  { next, toCome, earlier, undated }: Listing,
  pages: SitePages,
  voice: Voice,
): readonly object[] {
  const isDated = next !== undefined || earlier.length > 0;
  const list = (
    id: string,
    heading: string,
    projects: readonly ListedProject[],
    later: string | undefined = undefined,
  ) => ({
    id,
    heading: voice.say(heading),
    later: later && voice.say(later),
    cards: projects.map((project) => ({ ...cardView(project, pages, voice), repeated: project === next })),
    // Nothing in it but what is shown above.
    hidden: projects.every((project) => project === next),
  });
  return [
    // Which sessions are still to come only the reader's own day tells: the script says so.
    ...(isDated
      ? [
          list('to-come', 'site-dates', [...(next ? [next] : []), ...toCome], 'projects-to-come'),
          list('earlier', 'site-earlier', earlier),
        ]
      : []),
    ...(undated.length > 0 ? [list('undated', isDated ? 'site-undated' : 'projects-archive', undated)] : []),
  ];
}
