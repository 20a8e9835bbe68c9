import { pictureElement } from '../drawing/figures.ts';
import type { Site } from '../project/model.ts';
import { typographic } from '../words/typographic.ts';
import { type Voice, voiceOf } from '../words/voice.ts';
import { previewElements, type SitePages, sitePageHtml } from './frame.ts';
import { type ListedProject, type Listing, listingOf, papersLines } from './listed.ts';
import { meetingFacts, meetingOf, siteMeeting } from './meeting.ts';
import { openDates } from './scheduled.ts';
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
 * no day. The whole list stands in the page: scripts only sort it by the reader's day, and hide what is not looked for.
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
        none: voice.say('site-found-none'),
        choices: choicesOf(projects, voice),
        found: voice.say('site-found'),
        all: voice.count('site-found-all', projects.length),
      },
      lists: listsOf(listing, pages, voice),
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

/** A third of a desk screen's column; a thumbnail on a phone. */
const CARD_SIZES = '(min-width: 44rem) 21rem, 7.5rem';

/** Stands between two tags; no tag of one line holds it. */
const TAG_BREAK = '\n';

/** What the list shows of a project, and what it is found by. */
function cardView(project: ListedProject, { site }: SitePages, voice: Voice): object {
  const { slug, title, summary, session, level, minutes, occasion, tags, picture, accent, papers } = project;
  return {
    href: `${slug}/index.html`,
    session,
    fullWhen: session === undefined ? undefined : whenText(session, hoursOf(site), voice),
    place: session === undefined ? undefined : meetingOf(project, site).place,
    ownPlace: project.place,
    calendar: `${slug}/${slug}.ics`,
    title: typographic(title, voice.say),
    summary: summary === undefined ? undefined : typographic(summary, voice.say),
    accent,
    // The card's title says what the picture shows; a second reading of it would only be in the way.
    picture: picture && {
      html: pictureElement(picture, '', { sizes: CARD_SIZES, lazy: true }),
      drawn: picture.drawn,
    },
    when: session === undefined ? undefined : voice.day(session),
    facts: [
      ...(minutes === undefined ? [] : [voice.duration(minutes)]),
      ...(level === undefined ? [] : [level]),
    ],
    papers: papersLines(title, papers, voice),
    found: {
      level: level ?? '',
      minutes: minutes === undefined ? '' : String(minutes),
      occasion: occasion ?? '',
      tags: tags.join(TAG_BREAK),
    },
  };
}

/** One way of narrowing the list: a name for the address, what it asks, and what there is to choose. */
type Filter = {
  readonly name: 'level' | 'time' | 'occasion' | 'tag';
  readonly label: string;
  readonly any: string;
  readonly options: readonly { readonly value: string; readonly text: string }[];
};

/** Words for how hard a project is, the easiest first; others come after them. */
const LEVELS = ['beginner', 'easy', 'improver', 'intermediate', 'confident', 'advanced', 'expert'];
const MINUTES = [15, 30, 45, 60, 90, 120, 180];

/** What the projects differ in. What they all share is no choice. */
export function choicesOf(projects: readonly ListedProject[], voice: Voice): readonly Filter[] {
  const levels = distinct(projects.map(({ level }) => level)).toSorted((a, b) => rank(a) - rank(b));
  const choice = (name: Filter['name'], options: Filter['options']): Filter => ({
    name,
    label: voice.say(`site-find-${name}`),
    any: voice.say(`site-find-any-${name}`),
    options,
  });
  return [
    choice('level', levels.map(plainOption)),
    choice('time', timesOf(projects, voice)),
    choice('occasion', distinct(projects.map(({ occasion }) => occasion)).map(plainOption)),
    choice('tag', distinct(projects.flatMap(({ tags }) => tags)).map(plainOption)),
  ].filter(({ name, options }) => options.length > (name === 'level' ? 1 : 0));
}

/** Times that some projects fit into and some do not. */
function timesOf(projects: readonly ListedProject[], voice: Voice): Filter['options'] {
  const taken = projects.flatMap(({ minutes }) => minutes ?? []);
  return MINUTES.filter(
    (most) => taken.some((minutes) => minutes <= most) && taken.some((minutes) => minutes > most),
  ).map((most) => ({ value: String(most), text: voice.duration(most) }));
}

function distinct(texts: readonly (string | undefined)[]): readonly string[] {
  return [...new Set(texts)].filter((text) => text !== undefined).sort();
}

/** Begins with a capital, as the words beside it in the list of choices do. */
function plainOption(value: string): Filter['options'][number] {
  return { value, text: `${value.charAt(0).toLocaleUpperCase()}${value.slice(1)}` };
}

function rank(level: string): number {
  const place = LEVELS.indexOf(level.toLowerCase());
  return place < 0 ? LEVELS.length : place;
}
