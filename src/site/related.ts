import type { Voice } from '../words/voice.ts';
import { bySession, type ListedProject, listingOf } from './listed.ts';

/** How two projects are alike, the nearest first, and how much each counts. */
const WAYS = { form: 4, occasion: 3, tag: 2 } as const;

type Relation = keyof typeof WAYS;

/** What a project's page leads on to. */
type Related = {
  /** Its neighbors in the list: by their sessions; by title where there is none. */
  readonly before: ListedProject | undefined;
  readonly after: ListedProject | undefined;
  /** The nearest, and in what they are alike above all. */
  readonly alike: readonly { readonly project: ListedProject; readonly way: Relation }[];
};

const MOST_ALIKE = 3;

/** What each project's page leads on to, by slug. */
export function relatedOf(projects: readonly ListedProject[]): ReadonlyMap<string, Related> {
  const dated = projects.filter(({ session }) => session !== undefined).toSorted(bySession);
  const { undated } = listingOf(projects, '');
  const sharing = groupsOf(projects);
  const found = new Map<string, Related>();
  for (const row of [dated, undated]) {
    for (const [place, project] of row.entries()) {
      const [before, after] = [row[place - 1], row[place + 1]];
      const alike = alikeTo(project, sharing).filter((each) => ![before, after].includes(each.project));
      found.set(project.slug, { before, after, alike: alike.slice(0, MOST_ALIKE) });
    }
  }
  return found;
}

/** What a project may share with others. */
function marksOf({ forms = [], occasion, tags }: ListedProject): readonly (readonly [Relation, string])[] {
  return [
    ...forms.map((form) => ['form', form] as const),
    ...(occasion === undefined ? [] : [['occasion', occasion] as const]),
    ...tags.map((tag) => ['tag', tag] as const),
  ];
}

type Groups = ReadonlyMap<string, readonly ListedProject[]>;

function groupsOf(projects: readonly ListedProject[]): Groups {
  const groups = new Map<string, ListedProject[]>();
  for (const project of projects)
    for (const mark of marksOf(project)) {
      const key = mark.join(' ');
      groups.set(key, [...(groups.get(key) ?? []), project]);
    }
  return groups;
}

/** The nearest, two to spare for the neighbors. A mark that few share says more than one that all have. */
function alikeTo(project: ListedProject, sharing: Groups): Related['alike'] {
  const found = new Map<ListedProject, { way: Relation; score: number }>();
  for (const mark of marksOf(project)) {
    const [way] = mark;
    const group = sharing.get(mark.join(' ')) ?? [];
    for (const other of group) {
      const before = found.get(other);
      const score = (before?.score ?? 0) + WAYS[way] / Math.sqrt(group.length);
      found.set(other, { way: before?.way ?? way, score });
    }
  }
  found.delete(project);
  return [...found]
    .toSorted(([a, { score: x }], [b, { score: y }]) => y - x || bySession(a, b))
    .slice(0, MOST_ALIKE + 2)
    .map(([each, { way }]) => ({ project: each, way }));
}

/**
 * The script that says what a project's page leads on to. It stands apart from the page, so that no page is made again
 * when another project is.
 */
export function moreScript({ before, after, alike }: Related, voice: Voice): string {
  const more = {
    neighbors: [...cardOf(before, 'site-before', voice), ...cardOf(after, 'site-after', voice)],
    alike: alike.flatMap(({ project, way }) => cardOf(project, `site-same-${way}`, voice)),
  };
  return `globalThis.sheetwright = { ...globalThis.sheetwright, more: ${JSON.stringify(more)} };\n`;
}

function cardOf(project: ListedProject | undefined, why: string, voice: Voice): readonly object[] {
  if (!project) return [];
  const { slug, title, session, picture, accent } = project;
  return [
    {
      slug,
      title,
      accent,
      picture: picture?.src,
      why: voice.say(why),
      when: session && voice.day(session),
    },
  ];
}
