import type { PlacedPicture } from '../drawing/placed-picture.ts';
import { compare } from '../measure/numbers.ts';
import type { EditionName } from '../measure/ruler-unit.ts';
import type { Revision } from '../project/ledger/ledger.ts';
import type { NamedLink } from '../project/model.ts';
import type { Voice } from '../words/voice.ts';

/** What the site's own pages know of a project. Paths are relative to the site's root. */
export type ListedProject = {
  readonly slug: string;
  readonly title: string;
  readonly summary?: string | undefined;
  /** `YYYY-MM-DD`. */
  readonly session?: string | undefined;
  /** Where and with whom, as its sheet says; the settings say it of all others. */
  readonly place?: string | undefined;
  readonly host?: string | undefined;
  readonly contact?: string | undefined;
  readonly terms?: string | undefined;
  readonly links?: readonly NamedLink[] | undefined;
  readonly level?: string | undefined;
  readonly minutes?: number | undefined;
  readonly tags: readonly string[];
  readonly occasion?: string | undefined;
  readonly picture?: ListedPicture | undefined;
  /** `#rrggbb`, readable on white: the color of its paper. */
  readonly accent: string;
  readonly papers: readonly ListedPaper[];
  /** What it is made of and with: names of pieces and supplies, to be found by. */
  readonly parts?: readonly string[] | undefined;
  /** Names of the ready-made forms that its pieces have. */
  readonly forms?: readonly string[] | undefined;
  /** Addresses that it had before, as slugs. */
  readonly was?: readonly string[] | undefined;
  /** What was published of it, the earliest first. */
  readonly revisions: readonly Revision[];
  /** The edition that is printed of it, where only one is. */
  readonly alone?: EditionName | undefined;
};

/** A PDF: the keys of the line it stands on, and of its paper there. */
type ListedPaper = { readonly line: string; readonly paper: string; readonly href: string };

export type ListedPicture = PlacedPicture & {
  readonly alternative: string;
  /** A drawing is shown whole; a photo may lose its edges. */
  readonly drawn: boolean;
};

/** The projects in the order a visitor looks for them. */
export type Listing = {
  readonly next: ListedProject | undefined;
  readonly toCome: readonly ListedProject[];
  /** The latest first. */
  readonly earlier: readonly ListedProject[];
  readonly undated: readonly ListedProject[];
};

/** Sorts projects by their sessions, those from `today` on still being to come. */
export function listingOf(projects: readonly ListedProject[], today: string): Listing {
  const dated = projects.filter(({ session }) => session !== undefined).toSorted(bySession);
  const [next, ...toCome] = dated.filter(({ session = '' }) => session >= today);
  return {
    next,
    toCome,
    earlier: dated.filter(({ session = '' }) => session < today).toReversed(),
    undated: projects.filter(({ session }) => session === undefined).toSorted(byTitle),
  };
}

export function bySession(a: ListedProject, b: ListedProject): number {
  return compare(a.session ?? '', b.session ?? '') || byTitle(a, b);
}

/** The year of a session. */
export function yearOf(session: string | undefined): string | undefined {
  return session?.slice(0, 4);
}

function byTitle(a: ListedProject, b: ListedProject): number {
  return compare(a.title, b.title);
}

/** The day nothing is dated by: a fixed one, so that the same sources give the same bytes. */
export const UNDATED = '2000-01-01';

/** When what is said of a project last changed: the day of its last revision, never the clock's. */
export function changedOn({ revisions }: Pick<ListedProject, 'revisions'>): string {
  return revisions.at(-1)?.date ?? UNDATED;
}

/** The PDFs of one kind on one line: `Handout: Letter · A4 · Large print`. */
type PapersLine = {
  readonly kind: string;
  readonly papers: readonly { readonly name: string; readonly spoken: string; readonly href: string }[];
};

/** A project's PDFs, those to read and those to cut apart. `spoken` says of each what it is of, for those who hear it alone. */
export function papersLines(
  title: string,
  papers: readonly ListedPaper[],
  { say }: Voice,
): readonly PapersLine[] {
  const lines = new Set(papers.map(({ line }) => line));
  return [...lines].map((line) => {
    const kind = say(line);
    const own = papers.filter((each) => each.line === line);
    const offered = own.map(({ paper, href }) => {
      const name = say(paper);
      return { name, spoken: say('site-paper-of', { paper: name, kind, title }), href };
    });
    return { kind, papers: offered };
  });
}
