import { typographic } from '../words/typographic.ts';
import { type Voice, voiceOf } from '../words/voice.ts';
import { cardView } from './card-view.ts';
import { type SitePages, sitePageHtml } from './frame.ts';
import { bySession, type ListedProject, type Listing, listingOf, yearOf } from './listed.ts';

/** A page of the archive: projects of one year, or of none. */
type Shelf = {
  /** The page's name at the site's root; no project's address has a dot in it. */
  readonly path: string;
  /** Undefined for those that have no session. */
  readonly year: string | undefined;
  /** Of the shelves of that year, from 1 on. */
  readonly number: number;
  readonly projects: readonly ListedProject[];
};

/** The front page holds so many projects whole; of more it shows the nearest, and shelves hold all. */
const WHOLE = 60;
const NEAREST = { toCome: 24, earlier: 12, undated: 12 };

/** What a front page shows of a list. */
export function frontOf(listing: Listing): Listing {
  const { next, toCome, earlier, undated } = listing;
  if ((next ? 1 : 0) + toCome.length + earlier.length + undated.length <= WHOLE) return listing;
  return {
    next,
    toCome: toCome.slice(0, NEAREST.toCome),
    earlier: earlier.slice(0, NEAREST.earlier),
    undated: undated.slice(0, NEAREST.undated),
  };
}

/** The archive by years, the latest first, then what has no day; none where the front page holds everything. */
export function shelvesOf(projects: readonly ListedProject[]): readonly Shelf[] {
  if (projects.length <= WHOLE) return [];
  const { undated } = listingOf(projects, '');
  const dated = projects.filter(({ session }) => session !== undefined).toSorted(bySession);
  const years = [...new Set(dated.map(({ session }) => yearOf(session)))].toReversed();
  const groups = years.map((year) => ({
    year,
    projects: dated.filter(({ session }) => yearOf(session) === year),
  }));
  return [...groups, { year: undefined, projects: undated }].flatMap((group) => {
    const pages = Math.ceil(group.projects.length / WHOLE);
    return Array.from({ length: pages }, (_, page) => ({
      path: `${group.year ?? 'undated'}${page === 0 ? '' : `-${page + 1}`}.html`,
      year: group.year,
      number: page + 1,
      projects: group.projects.slice(page * WHOLE, (page + 1) * WHOLE),
    }));
  });
}

/** The way to every shelf, with how many projects it holds. */
export function shelfLinks(projects: readonly ListedProject[], voice: Voice): readonly object[] {
  return shelvesOf(projects).map((shelf) => ({
    href: shelf.path,
    name: shelfName(shelf, voice),
    count: voice.count('site-found-all', shelf.projects.length),
  }));
}

/** `2025`, `2025 (2)`, `More projects, A–D`. */
function shelfName({ year, number, projects }: Shelf, { say, language }: Voice): string {
  if (year !== undefined) return number === 1 ? year : `${year} (${number})`;
  const ends = [projects[0], projects.at(-1)].map((project) =>
    (project?.title ?? '').charAt(0).toLocaleUpperCase(language),
  );
  return `${say('site-undated')}, ${[...new Set(ends)].join('–')}`;
}

/** A shelf as a page, with the way to the others. */
export function shelfHtml(shelf: Shelf, shelves: readonly Shelf[], pages: SitePages): string {
  const voice = voiceOf(pages.labels);
  const name = shelfName(shelf, voice);
  const link = (other: Shelf | undefined): object | undefined =>
    other && { href: other.path, name: shelfName(other, voice) };
  const place = shelves.indexOf(shelf);
  const description = `${name}, ${voice.count('site-found-all', shelf.projects.length)}`;
  return sitePageHtml(
    'shelf',
    pages,
    { title: `${name} – ${pages.site.title}`, description, home: 'index.html' },
    {
      heading: typographic(name, voice.say),
      // Nothing here is sorted by the reader's day.
      cards: shelf.projects.map((project) => ({
        ...cardView(project, pages, voice),
        session: undefined,
        repeated: false,
      })),
      others: shelves.map((other) => ({ ...link(other), isThis: other === shelf })),
      before: link(shelves[place - 1]),
      after: link(shelves[place + 1]),
    },
  );
}
