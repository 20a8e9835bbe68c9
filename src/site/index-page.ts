import type { Site } from '../project/model.ts';
import type { Labels } from '../sheet/labels.ts';
import type { Renderer } from '../sheet/render.ts';
import { html, type SafeHtml } from '../sheet/safe-html.ts';
import { type Styles, styleElements } from '../sheet/styles.ts';
import { type Voice, voiceOf } from '../sheet/voice.ts';

/** What the list shows of a project. Paths are relative to the list. */
export type ListedProject = {
  readonly slug: string;
  readonly title: string;
  readonly summary?: string | undefined;
  /** `YYYY-MM-DD`. */
  readonly session?: string | undefined;
  readonly level?: string | undefined;
  readonly minutes?: number | undefined;
  readonly picture?: ListedPicture | undefined;
  readonly papers: readonly { readonly name: string; readonly href: string }[];
};

export type ListedPicture = {
  readonly src: string;
  readonly alternative: string;
  readonly width: number;
  readonly height: number;
};

/** What the site's own pages are made with. */
export type SitePages = {
  readonly site: Site;
  readonly labels: Labels;
  readonly styles: Styles;
  readonly renderer: Renderer;
};

/** `index.html`: sessions to come from `today` on, the next one first, then everything else, the latest first. */
export function indexHtml(projects: readonly ListedProject[], today: string, pages: SitePages): string {
  const voice = voiceOf(pages.labels);
  const isToCome = ({ session }: ListedProject): boolean => session !== undefined && session >= today;
  const toCome = projects.filter(isToCome).toSorted(bySession);
  const others = projects.filter((project) => !isToCome(project)).toSorted((a, b) => bySession(b, a));
  const { siteTitle, ...frame } = frameOf(pages, voice);
  const lists = [
    { id: 'to-come', heading: voice.say('projects-to-come'), projects: toCome },
    { id: 'archive', heading: voice.say('projects-archive'), projects: others },
  ].filter((list) => list.projects.length > 0);
  const model = {
    ...frame,
    siteTitle,
    documentTitle: siteTitle,
    description: siteTitle,
    home: undefined,
    empty: projects.length === 0,
    lists: lists.map(({ id, heading, projects: listed }) => ({
      id,
      heading,
      cards: listed.map((project) => cardOf(project, voice)),
    })),
  };
  return pages.renderer.render('index', model, voice.say);
}

/** `404.html`. A host shows it at any address, so it leads home only where the site says where that is. */
export function notFoundHtml(pages: SitePages): string {
  const voice = voiceOf(pages.labels);
  const frame = frameOf(pages, voice);
  const title = voice.say('not-found');
  const model = { ...frame, documentTitle: title, description: title, home: pages.site.url?.value };
  return pages.renderer.render('404', model, voice.say);
}

type Frame = {
  readonly language: string;
  readonly styles: SafeHtml;
  readonly scripts: readonly string[];
  readonly siteTitle: string;
};

function frameOf({ site, styles }: SitePages, { language }: Voice): Frame {
  return { language, styles: styleElements(styles, ''), scripts: [], siteTitle: site.title };
}

function bySession(a: ListedProject, b: ListedProject): number {
  const [first, second] = [a.session ?? '', b.session ?? ''];
  if (first !== second) return first < second ? -1 : 1;
  return a.title < b.title ? -1 : 1;
}

function cardOf(project: ListedProject, voice: Voice): object {
  const { slug, title, summary, session, level, minutes, picture, papers } = project;
  return {
    href: `${slug}/index.html`,
    title,
    summary,
    picture: picture && pictureHtml(picture),
    facts: [
      ...(session ? [voice.day(session)] : []),
      ...(minutes ? [voice.duration(minutes)] : []),
      ...(level ? [level] : []),
    ],
    papers,
    papersLabel: voice.say('papers-of', { title }),
  };
}

/** The card's title says what the picture shows; a second reading of it would only be in the way. */
function pictureHtml({ src, width, height }: ListedPicture): SafeHtml {
  return html`<img src="${src}" width="${width}" height="${height}" alt="" loading="lazy" decoding="async">`;
}
