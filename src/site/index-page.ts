import { pictureElement } from '../drawing/figures.ts';
import { typographic } from '../words/typographic.ts';
import { type Voice, voiceOf } from '../words/voice.ts';
import { previewElements, type SitePages, sitePageHtml } from './frame.ts';
import { type ListedProject, type Listing, listingOf, papersLines } from './listed.ts';
import { hoursOf, whenText } from './when.ts';

/** Addresses of the list's own files, relative to the site's root. */
type IndexLinks = {
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
  const { title } = site;
  const description = voice.say('site-description');
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
      next: listing.next && nextView(listing.next, pages, voice),
      find: projects.length > 1 && {
        choices: choicesOf(projects, voice),
        found: voice.say('site-found'),
        all: voice.say('site-found-all', { all: projects.length }),
      },
      lists: listsOf(listing, voice),
    },
  );
}

/** Half of a desk screen's column. */
const NEXT_SIZES = '(min-width: 60rem) 32rem, 92vw';

function nextView(project: ListedProject, { site }: SitePages, voice: Voice): object {
  const { slug, session = '', picture } = project;
  return {
    ...cardView(project, voice),
    picture: picture && { html: pictureElement(picture, '', { sizes: NEXT_SIZES }), drawn: picture.drawn },
    when: whenText(session, hoursOf(site), voice),
    calendar: `${slug}/${slug}.ics`,
  };
}

/** The next session stands in its list too, hidden until somebody looks for it: the list is whole when it is filtered. */
function listsOf({ next, toCome, earlier, undated }: Listing, voice: Voice): readonly object[] {
  const list = (id: string, heading: string, projects: readonly ListedProject[]) => ({
    id,
    heading: voice.say(heading),
    cards: projects.map((project) => ({ ...cardView(project, voice), repeated: project === next })),
    // Nothing in it but what is shown above.
    hidden: projects.every((project) => project === next),
  });
  const onlyUndated = next === undefined && earlier.length === 0;
  return [
    list('to-come', 'projects-to-come', [...(next ? [next] : []), ...toCome]),
    list('earlier', 'site-earlier', earlier),
    list('undated', onlyUndated ? 'projects-archive' : 'site-undated', undated),
  ].filter(({ cards }) => cards.length > 0);
}

/** A third of a desk screen's column; a thumbnail on a phone. */
const CARD_SIZES = '(min-width: 44rem) 21rem, 7.5rem';

/** Stands between two tags; no tag of one line holds it. */
const TAG_BREAK = '\n';

/** What the list shows of a project, and what it is found by. */
function cardView(project: ListedProject, voice: Voice): object {
  const { slug, title, summary, session, level, minutes, occasion, tags, picture, accent, papers } = project;
  return {
    href: `${slug}/index.html`,
    title: typographic(title, voice.language),
    summary: summary === undefined ? undefined : typographic(summary, voice.language),
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
